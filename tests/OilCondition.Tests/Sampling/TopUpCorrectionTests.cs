using CsCheck;
using OilCondition.Sampling;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Sampling;

public class TopUpCorrectionTests
{
    private static readonly DateTimeOffset End = Invented.Start.AddDays(1000);

    /// <summary>A charge of 1000 L in which the acid number grows evenly and every top-up replaces lost oil by new (0.1 mgKOH/g).</summary>
    private static OilHistory Diluted(
        double start,
        double perDay,
        double[] sampleDays,
        (double Day, double Litres)[] topUps
    )
    {
        double At(double day)
        {
            var value = start;
            var last = 0.0;
            foreach (var (when, litres) in topUps.Where(one => one.Day <= day).OrderBy(one => one.Day))
            {
                value += perDay * (when - last);
                value -= litres / 1000 * (value - 0.1);
                last = when;
            }

            return value + perDay * (day - last);
        }

        var samples = sampleDays.Select(
            (day, i) => Invented.Sample(i, day, (Measurands.AcidNumber, new Reading(At(day))))
        );
        return Invented.History(
            samples,
            [.. topUps.Select(one => new TopUp(Invented.Start.AddDays(one.Day), Volume.FromLiters(one.Litres)))]
        );
    }

    private static TopUpCorrection Correct(OilHistory history, Measurand measurand) =>
        TopUpCorrection.Of(history.SampleSeries(measurand, Invented.Start, End), history, End);

    [Fact]
    public void Even_ageing_comes_out_as_a_straight_line_whatever_was_topped_up()
    {
        Gen.Select(
                Gen.Double[0.1, 1],
                Gen.Double[-0.001, 0.003],
                Gen.Select(Gen.Int[0, 299], Gen.Double[1, 300]).Array[1, 6]
            )
            .Holds(
                (start, perDay, raw) =>
                {
                    var topUps = raw.DistinctBy(one => one.Item1).Select(one => (one.Item1 + 0.5, one.Item2)).ToArray();
                    var correction = Correct(
                        Diluted(start, perDay, [0, 40, 100, 170, 300], topUps),
                        Measurands.AcidNumber
                    );

                    correction.Outcome.ShouldBe(TopUpOutcome.Corrected);
                    var (days, values) = correction.Series.ToColumns();
                    for (var i = 1; i < days.Length; i++)
                    {
                        (values[i] - values[i - 1]).ShouldBe(perDay * (days[i] - days[i - 1]), 1e-9);
                    }
                },
                iter: 500
            );
    }

    [Fact]
    public void The_latest_reading_stands_and_the_reported_figures_stay_visible()
    {
        var correction = Correct(Diluted(0.2, 0.001, [0, 100, 200], [(150, 200)]), Measurands.AcidNumber);

        correction.Series.Points[2].Reading.ShouldBe(correction.Series.Points[2].Reported);
        correction.Series.Points[0].Reported.Value.ShouldBe(0.2, 1e-12);

        // By hand: before the top-up 0.35, of which 20 % of (0.35 - 0.1) = 0.05 is lost.
        correction.TotalDrop.ShouldBe(0.05, 1e-12);
        correction.Series.Points[0].Reading.Value.ShouldBe(0.15, 1e-12);
    }

    [Fact]
    public void A_top_up_after_the_last_reading_lowers_all_of_them()
    {
        var correction = Correct(Diluted(0.2, 0, [0, 100], [(150, 500)]), Measurands.AcidNumber);

        correction.Series.ToColumns().Values.ShouldBe([0.15, 0.15], 1e-12);
    }

    [Fact]
    public void What_is_not_corrected_says_why_and_stands_as_reported()
    {
        OilSample[] samples =
        [
            .. Enumerable
                .Range(0, 3)
                .Select(i =>
                    Invented.Sample(
                        i,
                        100 * i,
                        (Measurands.Viscosity40, new Reading(46 + i)),
                        (Measurands.Iron, new Reading(10 + i)),
                        (Measurands.AcidNumber, new Reading(0.2))
                    )
                ),
        ];
        var history = Invented.History(samples, new TopUp(Invented.Start.AddDays(150), Volume.FromLiters(100)));

        var viscosity = Correct(history, Measurands.Viscosity40);
        viscosity.Outcome.ShouldBe(TopUpOutcome.DoesNotAddUp);
        viscosity.Series.ToColumns().Values.ShouldBe([46, 47, 48]);
        Correct(history, Measurands.Iron).Outcome.ShouldBe(TopUpOutcome.NewOilValueMissing);
        Correct(Invented.History(samples), Measurands.AcidNumber).Outcome.ShouldBe(TopUpOutcome.NoTopUp);
    }

    [Fact]
    public void A_top_up_recorded_as_larger_than_the_charge_corrects_nothing_and_is_said()
    {
        var correction = Correct(Diluted(0.2, 0, [0, 100], [(50, 1200)]), Measurands.AcidNumber);

        correction.Outcome.ShouldBe(TopUpOutcome.LargerThanCharge);
        correction.Series.Points.ShouldAllBe(point => point.Reading == point.Reported);
    }
}
