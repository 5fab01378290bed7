using OilCondition.Purification;
using OilCondition.Sampling;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;
using OilCondition.Tests.Statistics;

namespace OilCondition.Tests.Purification;

/// <summary>Readings such as '&lt;10' go through the curve by their likelihood.</summary>
public class CleanupBelowLimitTests
{
    private static CleanupCurve C04(CleanupOptions? options = null)
    {
        var series = DecaySeries.Read("C04.csv");
        Reading[] readings =
        [
            .. series.Values.Select(
                (value, i) => new Reading(value, series.BelowLimit[i] ? Qualifier.LessThan : Qualifier.None)
            ),
        ];
        return CleanupCurve.Fit(Runs.Moments(series.Times), readings, options);
    }

    [Theory]
    [InlineData("k")]
    [InlineData("Cinf")]
    [InlineData("C0")]
    [InlineData("ML sigma (no df correction)")]
    [Trait("Category", "Reference")]
    public void The_censored_reference_series_is_met(string quantity)
    {
        var row = ReferenceFolder
            .Cases("cleanup/expected.csv")
            .Single(one => one.Quantity == quantity && one.Inputs.Contains("left-censored", StringComparison.Ordinal));
        var curve = C04();

        row.ShouldAgree(
            quantity switch
            {
                "k" => curve.RatePerHour,
                "Cinf" => curve.Floor,
                "C0" => curve.Start,
                _ => curve.ResidualStandardDeviation,
            }
        );
    }

    [Fact]
    public void Every_answer_of_a_curve_is_there()
    {
        var curve = C04();

        curve.Count.ShouldBe(18);
        curve.AboveLimitCount.ShouldBe(15);
        // Truth of the invented series: 420 to 21 at 0.15 per hour; 30 is reached after ln(399 / 9) / 0.15 = 25.28 h.
        curve.RateIntervalPerHour().Contains(0.15).ShouldBeTrue();
        curve.HalfLifeIntervalHours().Contains(Math.Log(2) / 0.15).ShouldBeTrue();
        curve.HalfLifeIntervalHours().Lower.ShouldBe(Math.Log(2) / curve.RateIntervalPerHour().Upper, 1e-9);
        curve.FloorInterval().Contains(21).ShouldBeTrue();
        curve.IntervalAt(Runs.At(10)).Contains(Runs.Exponential(10, 420, 21, 0.15)).ShouldBeTrue();
        var interval = curve.IntervalAt(Runs.At(10));
        (interval.Upper - interval.Lower).ShouldBeInRange(1, 10);
        var reading = curve.BandAt(Runs.At(10), CrossingOf.NewReading);
        (reading.Upper - reading.Lower).ShouldBeInRange(15, 25); // 2 · 1.753 · 5 and the band of the curve
        curve.TimeTo(30).ShouldBeOfType<TimeToTarget.Reached>().IsDemonstrated.ShouldBeTrue();
        curve.TimeTo(5).ShouldBeOfType<TimeToTarget.OutOfReach>();
    }

    /// <summary>Second route: without readings below their limit the likelihood's interval of the curve is that of least squares.</summary>
    [Fact]
    public void The_interval_of_the_censored_curve_is_that_of_least_squares_where_nothing_is_censored()
    {
        double[] hours = Runs.Evenly(10, 8);
        var random = new Random(2);
        double[] values = [.. hours.Select(t => Runs.Exponential(t, 500, 60, 0.4) + 10 * Runs.Normal(random))];
        var censored = CensoredDecay.Fit(hours, values, new bool[10]);
        var plain = ExponentialDecay.Analyze(hours, values);

        foreach (var hour in new[] { 0, 2.5, 7, 12 })
        {
            var one = censored.ValueInterval(hour, 0.9);
            var other = plain.ValueAt(hour, 0.9);
            one.Lower.ShouldBe(other.Lower, 1e-3);
            one.Upper.ShouldBe(other.Upper, 1e-3);
        }
    }

    [Fact]
    public void Fewer_than_four_above_the_limit_are_refused_with_the_reason()
    {
        Reading below = new(20, Qualifier.LessThan);
        var curve = CleanupCurve.Fit(
            Runs.Moments([0, 2, 4, 6, 8, 10]),
            [new Reading(100), new Reading(60), new Reading(30), below, below, below]
        );

        curve.Status.ShouldBe(ExponentialDecayStatus.TooFewAboveLimit);
        var few = curve.TimeTo(10).ShouldBeOfType<TimeToTarget.TooFewAboveLimit>();
        few.AboveLimitCount.ShouldBe(3);
        few.Needed.ShouldBe(4);
        var loop = new CleanupLoop(UnitsNet.Volume.FromLiters(100), UnitsNet.VolumeFlow.FromLitersPerMinute(1));
        new LoopPerformance(curve, loop).RemovalPerPass().Outcome.ShouldBe(CleanupFigureOutcome.TooFewAboveLimit);
    }

    [Fact]
    public void Options_that_the_likelihood_does_not_know_are_refused()
    {
        foreach (
            var options in new[]
            {
                CleanupOptions.ForCounts,
                new CleanupOptions(robust: true),
                new CleanupOptions(floor: 10),
                new CleanupOptions(ratePerHour: 0.1),
            }
        )
        {
            Should.Throw<ArgumentException>(() => C04(options)).ParamName.ShouldBe("options");
        }

        // A stated start of the fall is no part of the curve.
        C04(new CleanupOptions(startedAt: Runs.At(2))).LeftOutReadings.Count.ShouldBe(2);
    }
}
