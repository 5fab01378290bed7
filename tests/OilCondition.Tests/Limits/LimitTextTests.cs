using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Limits;

/// <summary>How the types of this room print themselves, against texts written by hand.</summary>
public class LimitTextTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private static Limit Water(int confirmations = 1) =>
        new(
            Measurands.WaterContent,
            LimitKind.Absolute,
            new LimitBand(200, 500),
            null,
            AnySource,
            confirmations: confirmations
        );

    private static LimitEvaluation Of(int confirmations, params double[] values) =>
        Water(confirmations)
            .Evaluate(
                Invented.Oil,
                Invented
                    .History(
                        values.Select(
                            (value, i) => Invented.Sample(i, i, (Measurands.WaterContent, new Reading(value)))
                        )
                    )
                    .SampleSeries(Measurands.WaterContent, Invented.Start, Invented.Start.AddDays(99))
            );

    public static TheoryData<object, string> Texts() =>
        new()
        {
            { new LimitBand(200, 500), "alert 200, alarm 500" },
            { new LimitBand(null, 0.3), "alarm 0.3" },
            { Water(), "water content, absolute, above alert 200, alarm 500 mg/kg" },
            {
                new Limit(
                    Measurands.Viscosity40,
                    LimitKind.PercentChangeFromNew,
                    new LimitBand(5, 10),
                    new LimitBand(-5, -10),
                    AnySource
                ),
                "viscosity at 40 °C, percent change from new, above alert 5, alarm 10; below alert -5, alarm -10 %"
            },
            {
                new Limit(
                    Measurands.Iron,
                    LimitKind.RateOfChange,
                    new LimitBand(5, null),
                    null,
                    AnySource,
                    per: TimeSpan.FromHours(1000),
                    overOilHours: true
                ),
                "iron, rate of change, above alert 5 mg/kg per 1000 oil hours"
            },
            { Of(1, 100, 212), "water content 212 mg/kg: alert since 2025-01-07" },
            { Of(2, 100, 600), "water content 600 mg/kg: normal, alarm waits for confirmation" },
            {
                Water().Evaluate(Invented.Oil, (Reading?)null),
                "water content without a reading: not determined (no reading)"
            },
            { LimitSet.Starter(StarterEquipment.Turbine), "Turbine oil, starting points: 13 limits" },
        };

    [Theory]
    [MemberData(nameof(Texts))]
    public void Prints_what_an_analyst_wants_to_read(object value, string expected) =>
        value.ToString().ShouldBe(expected);
}
