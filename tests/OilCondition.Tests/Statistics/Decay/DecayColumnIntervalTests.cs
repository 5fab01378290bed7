using OilCondition.Statistics;
using OilCondition.Tests.Cleanup;

namespace OilCondition.Tests.Statistics;

/// <summary>Intervals of many series at once: those of each series alone, at their level, without memory for each.</summary>
public class DecayColumnIntervalTests
{
    private static readonly double[] Hours = Runs.Evenly(12, 2.5);

    public static TheoryData<DecayNoise, bool, bool> Cases =>
        new()
        {
            { DecayNoise.Constant, false, false },
            { DecayNoise.Constant, true, false },
            { DecayNoise.Constant, false, true },
            { DecayNoise.Proportional, true, false },
            { DecayNoise.Logarithmic, false, false },
            { DecayNoise.TwoComponent, true, false },
        };

    /// <summary>Series of many lengths and shapes, in order of time or not, one after the other in the same memory.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Each_result_is_that_of_the_series_alone(DecayNoise noise, bool isShuffled, bool isRobust)
    {
        var options = new ExponentialDecayOptions(noise, robust: isRobust);
        var random = new Random(31);
        List<double[]> times = [];
        List<double[]> values = [];
        for (var i = 0; i < 60; i++)
        {
            var hours = Runs.Evenly(3 + random.Next(30), 0.5 + 4 * random.NextDouble());
            if (isShuffled)
            {
                random.Shuffle(hours);
            }

            var start = 200 + 1600 * random.NextDouble();
            times.Add(hours);
            values.Add([
                .. hours.Select(t => Math.Max(5, Runs.Exponential(t, start, 200, 1) + 20 * Runs.Normal(random))),
            ]);
        }

        int[] offsets = [0, .. times.Select((_, i) => times.Take(i + 1).Sum(one => one.Length))];
        double[] allTimes = [.. times.SelectMany(one => one)];
        double[] allValues = [.. values.SelectMany(one => one)];
        var together = ExponentialDecay.FitColumns(offsets, allTimes, allValues, 0.9, options);

        together.Length.ShouldBe(60);
        var doubted = 0;
        for (var i = 0; i < 60; i++)
        {
            var alone = ExponentialDecay.Analyze(times[i], values[i], options);
            together[i].Fit.ShouldBe(alone.Fit);
            together[i].Start.ShouldBe(alone.Start(0.9));
            together[i].Floor.ShouldBe(alone.Floor(0.9));
            together[i].Rate.ShouldBe(alone.Rate(0.9));
            doubted += together[i].Rate.CoverageInDoubt ? 1 : 0;
        }

        doubted.ShouldBeGreaterThan(0, "no series whose warning could be lost");
    }

    /// <summary>Nominal 90 %: of 4000 drawn series the standard error is 0.5 points. Truth 1000 to 100 at 1 per h, scatter 30, no bound.</summary>
    [Fact]
    public void Intervals_hold_the_truth_as_often_as_they_say()
    {
        var (offsets, times, values) = Drawn(4000, new Random(5));
        var all = ExponentialDecay.FitColumns(
            offsets,
            times,
            values,
            0.9,
            new ExponentialDecayOptions(lowestFloor: null)
        );

        Share(one => one.Start.Contains(1000)).ShouldBeInRange(0.88, 0.92);
        Share(one => one.Floor.Contains(100)).ShouldBeInRange(0.88, 0.92);
        Share(one => one.Rate.Contains(1)).ShouldBeInRange(0.88, 0.92);

        double Share(Func<ExponentialDecay.WithIntervals, bool> holds) => all.Count(holds) / 4000.0;
    }

    [Theory]
    [InlineData(DecayNoise.Constant)]
    [InlineData(DecayNoise.Proportional)]
    [InlineData(DecayNoise.Logarithmic)]
    public void A_series_takes_no_memory_of_its_own(DecayNoise noise)
    {
        var (_, times, values) = Drawn(20, new Random(6));
        var one = new DecayIntervals(new ExponentialDecayOptions(noise), 0.9);
        double sum = 0;
        void All()
        {
            for (var i = 0; i < 20; i++)
            {
                sum += one.Of(times.AsSpan(12 * i, 12), values.AsSpan(12 * i, 12)).Rate.Lower ?? 0;
            }
        }

        All();
        var before = GC.GetAllocatedBytesForCurrentThread();
        All();

        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBeLessThanOrEqualTo(0);
        sum.ShouldBeGreaterThan(10);
    }

    [Fact]
    public void What_is_known_and_what_is_too_few_are_named()
    {
        double[] times = [0, 1, 2, 3, 0, 1];
        double[] values = [900, 400, 220, 150, 800, 300];
        var all = ExponentialDecay.FitColumns(
            new[] { 0, 4, 6 },
            times,
            values,
            0.9,
            new ExponentialDecayOptions(floor: 100)
        );

        all[0].Floor.Outcome.ShouldBe(IntervalOutcome.Known);
        all[0].Floor.Lower.ShouldBe(100);
        all[0].Rate.Outcome.ShouldBe(IntervalOutcome.Bounded);
        all[1].Fit.Status.ShouldBe(ExponentialDecayStatus.TooFewReadings);
        all[1].Start.Outcome.ShouldBe(IntervalOutcome.TooFewReadings);
        all[1]
            .ToString()
            .ShouldBe("too few readings: 2; start too few readings; floor 100 (given); rate too few readings");
        foreach (var level in new[] { 0, 1, double.NaN })
        {
            Should
                .Throw<ArgumentOutOfRangeException>(() =>
                    ExponentialDecay.FitColumns(new[] { 0, 6 }, times, values, level)
                )
                .ParamName.ShouldBe("confidence");
        }

        Should.Throw<ArgumentException>(() => ExponentialDecay.FitColumns(new[] { 0, 5 }, times, values, 0.9));
    }

    private static (int[] Offsets, double[] Times, double[] Values) Drawn(int count, Random random)
    {
        var series = Enumerable.Range(0, count).ToList();
        return (
            [.. Enumerable.Range(0, count + 1).Select(i => Hours.Length * i)],
            [.. series.SelectMany(_ => Hours)],
            [.. series.SelectMany(_ => Hours.Select(t => Runs.Exponential(t, 1000, 100, 1) + 30 * Runs.Normal(random)))]
        );
    }
}
