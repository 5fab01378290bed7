using CsCheck;
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
    public void A_top_up_at_the_moment_of_a_sample_comes_after_it()
    {
        // By hand: of 0.3, a fifth of (0.3 - 0.1) is lost after the last sample.
        var history = Invented.History(
            [
                Invented.Sample(0, 0, (Measurands.AcidNumber, new Reading(0.3))),
                Invented.Sample(1, 100, (Measurands.AcidNumber, new Reading(0.3))),
            ],
            new TopUp(Invented.Start.AddDays(100), Volume.FromLiters(200))
        );

        Correct(history, Measurands.AcidNumber).Series.ToColumns().Values.ShouldBe([0.26, 0.26], 1e-12);
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
    public void Corrected_readings_are_those_of_the_run_without_top_ups_less_what_was_lost() =>
        Gen.Select(
                Gen.Double[0, 8],
                Gen.Double[-0.02, 0.05],
                Gen.Int[1, 60].Array[1, 9],
                Gen.Select(Gen.Int[0, 500], Gen.Double[1, 200]).Array[0, 8]
            )
            .Holds(
                (start, perDay, steps, raw) =>
                {
                    double[] days = [0, .. steps.Select((_, i) => (double)steps.Take(i + 1).Sum())];
                    var topUps = raw.DistinctBy(one => one.Item1).Select(one => (one.Item1 + 0.5, one.Item2)).ToArray();
                    var history = Diluted(start + 10, perDay, days, topUps);
                    var correction = Correct(history, Measurands.AcidNumber);
                    var loss = correction.TotalDrop;

                    foreach (var point in correction.Series.Points.Except(correction.Bounded))
                    {
                        var day = (point.At - Invented.Start).TotalDays;
                        (point.Reading.Value + loss).ShouldBe(start + 10 + perDay * day, 1e-8);
                    }

                    // Second route: the whole charge is there before and after; what is lost of it is what a top-up took out.
                    foreach (var point in correction.Bounded)
                    {
                        var day = (point.At - Invented.Start).TotalDays;
                        (start + 10 + perDay * day - loss).ShouldBeLessThan(1e-8);
                        point.Reading.ShouldBe(new Reading(0, Qualifier.LessThan));
                        point.Reported.IsCensored.ShouldBeFalse();
                    }
                },
                iter: 300
            );

    [Fact]
    public void Wear_of_which_nothing_is_left_is_a_bound_and_does_not_flatten_the_forecast()
    {
        // 0.01 mgKOH/g a day, a fifth of the charge renewed every 50 days: it settles, and the first readings lie below 0 when corrected.
        var topUps = Enumerable.Range(0, 12).Select(i => (50 * i + 25.0, 200.0)).ToArray();
        double[] days = [.. Enumerable.Range(0, 13).Select(i => 50.0 * i)];
        var correction = Correct(Diluted(0.2, 0.01, days, topUps), Measurands.AcidNumber);

        correction.Outcome.ShouldBe(TopUpOutcome.Corrected);
        correction.Bounded.Select(point => point.At).ShouldBe(days.Take(8).Select(day => Invented.Start.AddDays(day)));
        correction.Series.Points.Take(8).ShouldBe(correction.Bounded);
        var trend = SeriesTrend.Of(correction.Series);
        trend.Assessment.Verdict.ShouldBe(OilCondition.Statistics.TrendVerdict.Rising);
        var (at, values) = correction.Series.ToColumns();
        for (var i = 1; i < at.Length; i++)
        {
            ((values[i] - values[i - 1]) / (at[i] - at[i - 1])).ShouldBe(0.01, 1e-9);
        }
    }

    [Fact]
    public void A_top_up_just_before_a_reading_leaves_no_infinite_rate()
    {
        var history = Invented.History(
            [
                Invented.Sample(0, 0, (Measurands.AcidNumber, new Reading(0.3))),
                Invented.Sample(1, 100, (Measurands.AcidNumber, new Reading(0.2))),
            ],
            new TopUp(Invented.Start.AddDays(100).AddTicks(-1), Volume.FromLiters(1000))
        );

        Correct(history, Measurands.AcidNumber).Outcome.ShouldBe(TopUpOutcome.RenewsCharge);
    }

    [Theory]
    [InlineData(1200, 0, TopUpOutcome.RenewsCharge)]
    [InlineData(899, 0, TopUpOutcome.Corrected)] // a tenth of the oil must be left
    [InlineData(901, 0, TopUpOutcome.RenewsCharge)]
    [InlineData(700, 700, TopUpOutcome.RenewsCharge)] // 0.3 x 0.3
    [InlineData(600, 600, TopUpOutcome.Corrected)] // 0.4 x 0.4
    public void Top_ups_that_leave_next_to_nothing_between_two_readings_are_not_corrected(
        double one,
        double other,
        object expected
    )
    {
        var topUps = new[] { (20.0, one), (60.0, other) }.Where(topUp => topUp.Item2 > 0).ToArray();

        Correct(Diluted(0.2, 0, [0, 100], topUps), Measurands.AcidNumber).Outcome.ShouldBe((TopUpOutcome)expected);
        if (topUps.Length == 2)
        {
            Correct(Diluted(0.2, 0, [0, 40, 100], topUps), Measurands.AcidNumber)
                .Outcome.ShouldBe(TopUpOutcome.Corrected);
        }
    }

    [Fact]
    public void What_is_recorded_as_an_oil_change_in_the_guise_of_a_top_up_leaves_the_readings_as_reported()
    {
        var correction = Correct(Diluted(0.2, 0, [0, 100], [(50, 1200)]), Measurands.AcidNumber);

        correction.Outcome.ShouldBe(TopUpOutcome.RenewsCharge);
        correction.Series.Points.ShouldAllBe(point => point.Reading == point.Reported);
    }

    [Fact]
    public void A_top_up_after_now_is_not_looked_at()
    {
        var history = Diluted(0.2, 0.001, [0, 100, 200], [(150, 200)]);
        TopUpCorrection On(double day)
        {
            var now = Invented.Start.AddDays(day);
            return TopUpCorrection.Of(history.SampleSeries(Measurands.AcidNumber, Invented.Start, now), history, now);
        }

        On(149).Outcome.ShouldBe(TopUpOutcome.NoTopUp);
        On(149).TopUps.ShouldBeEmpty();
        On(150).TopUps.Count.ShouldBe(1);
    }
}
