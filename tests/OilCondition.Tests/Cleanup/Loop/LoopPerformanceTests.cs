using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Loop;

/// <summary>Figures derived from a curve: worked by hand, by the way back through the balance, and by simulation.</summary>
public class LoopPerformanceTests
{
    private static readonly CleanupLoop Loop = new(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20));

    /// <summary>The balance run forward: η = 0.6, a floor of 30 mg/kg, 20 mg/kg per hour coming in (0.6 turnovers per hour).</summary>
    private static CleanupCurve Wet(double noise = 0, int seed = 1, int count = 12, double span = 8)
    {
        var random = new Random(seed);
        var eta = Ratio.FromPercent(60);
        var level = Loop.LevelWithIngress(30, 20, eta);
        var hours = Runs.Evenly(count, span);
        return CleanupCurve.Fit(
            Runs.Moments(hours),
            [
                .. hours.Select(t =>
                    Loop.ValueAfter(1000, level, eta, TimeSpan.FromHours(t)) + noise * Runs.Normal(random)
                ),
            ],
            new CleanupOptions(detectSlowStart: false)
        );
    }

    [Fact]
    public void Exact_readings_of_a_loop_give_its_removal_and_ingress_back()
    {
        var performance = new LoopPerformance(Wet(), Loop);

        performance.RemovalPerPass().Estimate!.Value.DecimalFractions.ShouldBe(0.6, 1e-6);
        // 1 − exp(−0.6) = 0.451188, worked by hand
        performance.RemovalPerTurnover().Estimate!.Value.DecimalFractions.ShouldBe(0.451188, 1e-6);
        performance.IngressPerHour(30).Estimate!.Value.ShouldBe(20, 1e-4);
        performance.IngressPerHour(30).Method.ShouldBe(CleanupFigureMethod.Profile);
        performance.ContradictsLoop().ShouldBeFalse();
        new LoopPerformance(Wet(), new CleanupLoop(Volume.FromLiters(4000), Loop.Flow))
            .ContradictsLoop()
            .ShouldBeTrue();
    }

    [Fact]
    public void Particles_that_come_in_are_those_of_the_published_steady_state()
    {
        // cleanliness.csv CLN-130: 640 per mL, 50 L/min, β = 100 give 3.168e7 per minute, whatever the volume.
        var loop = new CleanupLoop(Volume.FromLiters(1500), VolumeFlow.FromLitersPerMinute(50));
        var rate = loop.RatePerHour(new FilterBeta(100).Efficiency);
        var hours = Runs.Evenly(10, 2);
        var curve = CleanupCurve.Fit(
            Runs.Moments(hours),
            [.. hours.Select(t => Runs.Exponential(t, 20000, 640, rate))],
            CleanupOptions.ForCounts
        );
        var ingress = new LoopPerformance(curve, loop).ParticleIngressPerMinute();

        ingress.Estimate!.Value.ShouldBe(3.168e7, 1e3);
        ingress.Estimate!.Value.ShouldBe(
            KidneyLoop.IngressionPerMinuteFrom(640, loop.Flow, new FilterBeta(100)),
            1e-5 * ingress.Estimate.Value
        );
        // A level of 320 per mL without ingress explains half of the floor.
        new LoopPerformance(curve, loop)
            .ParticleIngressPerMinute(320)
            .Estimate!.Value.ShouldBe(1.584e7, 1e3);
    }

    [Fact]
    public void A_stated_floor_above_what_the_readings_allow_is_contradicted_not_called_no_ingress()
    {
        var performance = new LoopPerformance(Wet(noise: 3), Loop);

        performance.IngressPerHour(200).Outcome.ShouldBe(CleanupFigureOutcome.FloorContradicted);
        performance.IngressPerHour(200).Estimate.ShouldBeNull();
        performance.IngressPerHour(30).Outcome.ShouldBe(CleanupFigureOutcome.Bounded);
        performance.IngressPerHour(30).Lower!.Value.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void What_the_readings_do_not_tell_is_named()
    {
        var flat = CleanupCurve.Fit(Runs.Moments(Runs.Evenly(8, 8)), [45, 44, 46, 45, 44, 46, 45, 45]);
        var flatLoop = new LoopPerformance(flat, Loop);
        flatLoop.RemovalPerPass().Outcome.ShouldBe(CleanupFigureOutcome.NotDetermined);
        flatLoop.IngressPerHour(0).Upper.ShouldBeNull();

        var few = CleanupCurve.Fit(Runs.Moments([0, 1, 2]), [900, 800, 700]);
        var fewLoop = new LoopPerformance(few, Loop);
        fewLoop.RemovalPerPass().Outcome.ShouldBe(CleanupFigureOutcome.TooFewReadings);
        fewLoop.RemovalPerPass().Estimate.ShouldBeNull();
        fewLoop.IngressPerHour(0).Outcome.ShouldBe(CleanupFigureOutcome.TooFewReadings);
        fewLoop.IngressPerHour(0).Lower.ShouldBeNull();

        var known = CleanupCurve.Fit(Runs.Moments([0, 2]), [900, 500], new CleanupOptions(floor: 50, ratePerHour: 0.3));
        new LoopPerformance(known, Loop).RemovalPerPass().Outcome.ShouldBe(CleanupFigureOutcome.Known);
        new LoopPerformance(known, Loop).IngressPerHour(30).Upper!.Value.ShouldBe(6, 1e-12);
    }

    /// <summary>Second route to the profile of k (floor − p): the fit at each fixed rate and the ellipse about it, from public calls alone.</summary>
    [Fact]
    public void The_profile_of_the_ingress_agrees_with_fits_at_fixed_rates()
    {
        var random = new Random(3);
        var hours = Runs.Evenly(10, 6);
        double[] values = [.. hours.Select(t => Runs.Exponential(t, 1000, 90, 0.4) + 20 * Runs.Normal(random))];
        var fit = ExponentialDecay.Fit(hours, values);
        // t(0.95; 7) = 1.894579 (any table of Student's t)
        var limit =
            fit.ResidualSumOfSquares
            + 1.894579 * 1.894579 * fit.ResidualStandardDeviation * fit.ResidualStandardDeviation;
        var low = double.PositiveInfinity;
        var high = double.NegativeInfinity;
        for (var u = Math.Log(0.05); u < Math.Log(2); u += 0.0005)
        {
            var rate = Math.Exp(u);
            var there = ExponentialDecay.Fit(hours, values, new ExponentialDecayOptions(rate: rate, lowestFloor: null));
            var room = limit - there.ResidualSumOfSquares;
            if (room < 0)
            {
                continue;
            }

            var reach = there.FloorStandardError / there.ResidualStandardDeviation * Math.Sqrt(room);
            low = Math.Min(low, rate * (Math.Max(0, there.Floor - reach) - 30));
            high = Math.Max(high, rate * (there.Floor + reach - 30));
        }

        var slope = ExponentialDecay.Analyze(hours, values).SlopeAt(30, 0.9);

        // The lower end sits on the kink where the bound on the floor takes over; the envelope's quartic rounds it, to the wide side.
        slope.Lower.ShouldBeInRange(low - 2e-3 * (high - low), low + 2e-4 * (high - low));
        slope.Upper.ShouldBe(high, 2e-4 * (high - low));
    }

    /// <summary>Nominal 90 %; 1500 runs a cell have a standard error of 0.8 points; the bound on the floor makes one time constant conservative.</summary>
    [Theory]
    [InlineData(8, 5.6, 87, 93)] // two time constants
    [InlineData(12, 8.4, 87, 93)] // three
    [InlineData(12, 2.8, 87, 97)] // one
    public void Removal_and_ingress_hold_their_coverage(int count, double span, double from, double to)
    {
        const int Cell = 1500;
        var removal = 0;
        var ingress = 0;
        for (var seed = 0; seed < Cell; seed++)
        {
            var performance = new LoopPerformance(Wet(noise: 25, seed, count, span), Loop);
            removal += Holds(performance.RemovalPerPass(), Ratio.FromDecimalFractions(0.6)) ? 1 : 0;
            ingress += Holds(performance.IngressPerHour(30), 20) ? 1 : 0;
        }

        (100.0 * removal / Cell).ShouldBeInRange(from, to);
        (100.0 * ingress / Cell).ShouldBeInRange(from, to);
    }

    internal static bool Holds<T>(CleanupFigure<T> figure, T truth)
        where T : struct, IComparable<T> =>
        (figure.Lower is not { } lower || truth.CompareTo(lower) >= 0)
        && (figure.Upper is not { } upper || truth.CompareTo(upper) <= 0);
}
