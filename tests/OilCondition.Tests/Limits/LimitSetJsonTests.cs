using CsCheck;
using OilCondition.Limits;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Limits;

/// <summary>A limit set that is written and read back has lost nothing.</summary>
public class LimitSetJsonTests
{
    private static string Facts(LimitSet set) =>
        $"{set.Name}|{set.Note}\n" + string.Join("\n", set.Limits.Select(Facts));

    private static string Facts(Limit limit) =>
        FormattableString.Invariant(
            $"{limit.Measurand.Id}|{limit.Kind}|{limit.Upper?.Alert:R}|{limit.Upper?.Alarm:R}|{limit.Lower?.Alert:R}|{limit.Lower?.Alarm:R}|{limit.DeadBand:R}|{limit.Confirmations}|{limit.Per?.Ticks}|{limit.OverOilHours}|{limit.Source.Kind}|{limit.Source.Text}|{limit.Source.Locator}|{limit.Note}"
        );

    [Theory]
    [InlineData(StarterEquipment.Turbine)]
    [InlineData(StarterEquipment.Hydraulic)]
    [InlineData(StarterEquipment.Gear)]
    [InlineData(StarterEquipment.Circulating)]
    [InlineData(StarterEquipment.InsulatingAbove170Kilovolt)]
    public void A_set_to_start_from_is_read_back_as_it_was(StarterEquipment equipment)
    {
        var set = LimitSet.Starter(equipment);
        var again = LimitSet.Parse(set.ToJson());
        Facts(again).ShouldBe(Facts(set));
        again.ToJson().ShouldBe(set.ToJson());
        set.Note.ShouldNotBeEmpty();
    }

    [Fact]
    public void Any_figure_is_read_back_to_its_last_digit()
    {
        var figures = Gen.Double[1e-6, 0.09];
        Gen.Select(figures, figures, Gen.Int[1, 3650], Gen.Bool, Gen.Int[1, 10])
            .Holds(
                (lower, room, days, overOilHours, confirmations) =>
                {
                    var source = new Source(SourceKind.Handbook, "\"a\" <b> é\n", "p. 3");
                    var band = new LimitBand(lower + room, lower + 1.7 * room);
                    var set = new LimitSet(
                        "n",
                        [
                            new Limit(
                                Measurands.AcidNumber,
                                LimitKind.Absolute,
                                band,
                                new LimitBand(null, lower),
                                source,
                                room / 3,
                                confirmations,
                                note: "x"
                            ),
                            new Limit(
                                Measurands.WaterContent,
                                LimitKind.RateOfChange,
                                band,
                                null,
                                source,
                                lower / 3,
                                null,
                                TimeSpan.FromDays(days),
                                overOilHours
                            ),
                            new Limit(
                                Measurands.Iron,
                                LimitKind.OwnHistory,
                                new LimitBand(99 + room, null),
                                null,
                                source
                            ),
                            new Limit(
                                Measurands.Particles4,
                                LimitKind.Fleet,
                                null,
                                new LimitBand(lower + 1, null),
                                source,
                                100 * room
                            ),
                        ],
                        "of the set"
                    );
                    Facts(LimitSet.Parse(set.ToJson())).ShouldBe(Facts(set));
                }
            );
    }
}
