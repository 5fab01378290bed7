using OilCondition.Cleanup;
using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Loop;

public class WaterAccountTests
{
    private static readonly Volume Charge = Volume.FromLiters(2000);
    private static readonly Density Oil = Density.FromKilogramsPerCubicMeter(870);

    private static CleanupCurve Curve(double noise = 0, int seed = 1, int count = 12, double span = 6) =>
        CleanupCurve.Fit(
            Runs.Moments(Runs.Evenly(count, span)),
            Values(noise, seed, count, span),
            new CleanupOptions(DecayNoise.Constant, detectSlowStart: false)
        );

    private static double[] Values(double noise, int seed, int count, double span)
    {
        var random = new Random(seed);
        return
        [
            .. Runs.Evenly(count, span).Select(t => Runs.Exponential(t, 1000, 80, 0.5) + noise * Runs.Normal(random)),
        ];
    }

    private static MassFraction Ppm(double value) => MassFraction.FromPartsPerMillion(value);

    [Fact]
    public void Litres_and_grams_worked_by_hand()
    {
        // 2 m³ of 870 kg/m³ are 1740 kg. c(2 h) = 80 + 920 e^−1 = 418.4491 mg/kg, so that 581.5509e-6 · 1740 kg = 1.0118985 kg left,
        // 1.013723 L of 998.2 kg/m³. To 100 mg/kg: 318.4491e-6 · 1740 / 0.9982 = 0.555098 L. Ingress above 20: 0.5 · 60 · 1.74 = 52.2 g/h.
        var water = new WaterAccount(Curve(), Charge, Oil);

        water.OilMass.Kilograms.ShouldBe(1740, 1e-9);
        water.FallBetween(Runs.At(0), Runs.At(2)).Estimate!.Value.Liters.ShouldBe(1.013723, 1e-5);
        water.FallTo(Runs.At(2), Ppm(100)).Estimate!.Value.Liters.ShouldBe(0.555098, 1e-5);
        water.Ingress(Ppm(20)).Estimate!.Value.GramsPerHour.ShouldBe(52.2, 1e-3);
        // From 2500 mg/kg before the run: (2500 − 418.4491)e-6 · 1740 / 0.9982 = 3.628430 L
        water.FallSince(Ppm(2500), Runs.At(2)).Estimate!.Value.Liters.ShouldBe(3.628430, 1e-5);
        // Two hours of ingress are 104.4 g, 0.104588 L: in the condensate, not in the fall.
        water.DrawnOff(Runs.At(0), Runs.At(2), Ppm(20)).Estimate!.Value.Liters.ShouldBe(1.013723 + 0.104588, 1e-5);
    }

    /// <summary>Second route: the purifier's take integrated step by step, η Q (c − p) ρ.</summary>
    [Fact]
    public void Drawn_off_is_what_the_purifier_takes_step_by_step()
    {
        double litres = 0;
        for (var i = 0; i < 100_000; i++)
        {
            var c = Runs.Exponential((i + 0.5) * 4e-5, 1000, 80, 0.5);
            litres += 0.5 * (c - 20) * 1e-6 * 1740 / 0.9982 * 4e-5;
        }

        new WaterAccount(Curve(), Charge, Oil)
            .DrawnOff(Runs.At(0), Runs.At(4), Ppm(20))
            .Estimate!.Value.Liters.ShouldBe(litres, 1e-5);
    }

    [Fact]
    public void Each_figure_says_how_its_interval_is_made_and_what_is_extrapolated()
    {
        var water = new WaterAccount(Curve(10), Charge, Oil);

        water.FallBetween(Runs.At(0), Runs.At(6)).Method.ShouldBe(CleanupFigureMethod.Delta);
        water.FallBetween(Runs.At(0), Runs.At(6)).IsExtrapolated.ShouldBeFalse();
        water.FallBetween(Runs.At(0), Runs.At(7)).IsExtrapolated.ShouldBeTrue();
        water.FallTo(Runs.At(7), Ppm(90)).IsExtrapolated.ShouldBeTrue();
        water.FallSince(Ppm(1500), Runs.At(3)).Method.ShouldBe(CleanupFigureMethod.Profile);
        water.DrawnOff(Runs.At(0), Runs.At(3), Ppm(20)).Method.ShouldBe(CleanupFigureMethod.TwoIntervals);
        water.FallTo(Runs.At(3), Ppm(900)).Upper.ShouldBe(Volume.Zero);
        water.Ingress(Ppm(300)).Outcome.ShouldBe(CleanupFigureOutcome.FloorContradicted);
        water.DrawnOff(Runs.At(0), Runs.At(3), Ppm(300)).Outcome.ShouldBe(CleanupFigureOutcome.FloorContradicted);
    }

    [Fact]
    public void One_side_spends_the_whole_doubt_on_its_end()
    {
        var water = new WaterAccount(Curve(10), Charge, Oil);
        var both = water.FallBetween(Runs.At(0), Runs.At(3), 0.9);
        var upper = water.FallBetween(Runs.At(0), Runs.At(3), 0.95, IntervalSide.Upper);

        upper.Lower.ShouldBeNull();
        upper.Upper!.Value.Liters.ShouldBe(both.Upper!.Value.Liters, 1e-9);
        var since = water.FallSince(Ppm(1500), Runs.At(3), 0.95, IntervalSide.Lower);
        since.Upper.ShouldBeNull();
        since.Lower!.Value.Liters.ShouldBe(water.FallSince(Ppm(1500), Runs.At(3), 0.9).Lower!.Value.Liters, 1e-9);
    }

    [Fact]
    public void Too_few_readings_and_bad_input_are_named()
    {
        var few = CleanupCurve.Fit(Runs.Moments([0, 1, 2]), [900, 800, 700]);
        var water = new WaterAccount(few, Charge, Oil);

        water.FallBetween(Runs.At(0), Runs.At(2)).Outcome.ShouldBe(CleanupFigureOutcome.TooFewReadings);
        water.FallTo(Runs.At(0), Ppm(10)).Outcome.ShouldBe(CleanupFigureOutcome.TooFewReadings);
        water.FallSince(Ppm(1000), Runs.At(2)).Estimate.ShouldBeNull();
        water.Ingress(Ppm(0)).Outcome.ShouldBe(CleanupFigureOutcome.TooFewReadings);
        water.DrawnOff(Runs.At(0), Runs.At(2), Ppm(0)).Outcome.ShouldBe(CleanupFigureOutcome.TooFewReadings);
        var fitted = new WaterAccount(Curve(), Charge, Oil);
        Should
            .Throw<ArgumentOutOfRangeException>(() => fitted.FallBetween(Runs.At(-1), Runs.At(2)))
            .ParamName.ShouldBe("from");
        Should
            .Throw<ArgumentOutOfRangeException>(() => fitted.FallBetween(Runs.At(2), Runs.At(1)))
            .ParamName.ShouldBe("to");
        Should
            .Throw<ArgumentOutOfRangeException>(() => new WaterAccount(few, Volume.Zero, Oil))
            .Message.ShouldContain("L");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                new WaterAccount(few, Charge, Density.FromKilogramsPerCubicMeter(0.87))
            )
            .ParamName.ShouldBe("oilDensity");
    }

    private static CleanupCurve BelowLimit(double limit, int seed)
    {
        Reading[] readings =
        [
            .. Values(8, seed, 16, 14).Select(c => c < limit ? new Reading(limit, Qualifier.LessThan) : new Reading(c)),
        ];
        return CleanupCurve.Fit(
            Runs.Moments(Runs.Evenly(16, 14)),
            readings,
            new CleanupOptions(DecayNoise.Constant, detectSlowStart: false)
        );
    }

    [Fact]
    public void Readings_below_a_limit_have_their_figures_too()
    {
        var curve = BelowLimit(90, 1);
        var ingress = new WaterAccount(curve, Charge, Oil).Ingress(Ppm(20));

        curve.AboveLimitCount.ShouldBeLessThan(16);
        ingress.Method.ShouldBe(CleanupFigureMethod.TwoIntervals);
        LoopPerformanceTests.Holds(ingress, MassFlow.FromGramsPerHour(52.2)).ShouldBeTrue();
        ingress.Upper!.Value.GramsPerHour.ShouldBeLessThan(90);
    }

    /// <summary>A third to two thirds of the readings below the limit; nominal 90 %, 200 runs have a standard error of 2.1 points.</summary>
    [Theory]
    [InlineData(90)]
    [InlineData(300)]
    public void Litres_hold_their_coverage_with_readings_below_a_limit(double limit)
    {
        var truth = Volume.FromLiters(1.013723);
        var holds = Enumerable
            .Range(0, 200)
            .Count(seed =>
                LoopPerformanceTests.Holds(
                    new WaterAccount(BelowLimit(limit, seed), Charge, Oil).FallBetween(Runs.At(0), Runs.At(2)),
                    truth
                )
            );

        (holds / 2.0).ShouldBeInRange(85, 97);
    }

    /// <summary>Nominal 90 %; 1500 runs have a standard error of 0.8 points.</summary>
    [Theory]
    [InlineData(8, 4)]
    [InlineData(12, 6)]
    [InlineData(12, 2)]
    public void Litres_hold_their_coverage(int count, double span)
    {
        const int Cell = 1500;
        var fall = 0;
        var still = 0;
        var drawn = 0;
        var middle = Runs.At(span / 2);
        var atMiddle = Runs.Exponential(span / 2, 1000, 80, 0.5);
        double Litres(double ppm) => ppm * 1e-6 * 1740 / 0.9982;
        for (var seed = 0; seed < Cell; seed++)
        {
            var water = new WaterAccount(Curve(25, seed, count, span), Charge, Oil);
            fall += LoopPerformanceTests.Holds(
                water.FallBetween(Runs.At(0), middle),
                Volume.FromLiters(Litres(1000 - atMiddle))
            )
                ? 1
                : 0;
            still += LoopPerformanceTests.Holds(
                water.FallTo(middle, Ppm(100)),
                Volume.FromLiters(Litres(atMiddle - 100))
            )
                ? 1
                : 0;
            drawn += LoopPerformanceTests.Holds(
                water.DrawnOff(Runs.At(0), middle, Ppm(20)),
                Volume.FromLiters(Litres(1000 - atMiddle + 0.5 * 60 * span / 2))
            )
                ? 1
                : 0;
        }

        (100.0 * fall / Cell).ShouldBeInRange(87, 93);
        (100.0 * still / Cell).ShouldBeInRange(87, 93.5);
        (100.0 * drawn / Cell).ShouldBeGreaterThan(89);
    }
}
