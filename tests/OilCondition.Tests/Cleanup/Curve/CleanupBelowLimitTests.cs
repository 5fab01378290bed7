using CsCheck;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Statistics;

namespace OilCondition.Tests.Cleanup.Curve;

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
        var curve = C04(new CleanupOptions(DecayNoise.Constant));

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
        var reading = curve.BandAt(Runs.At(10), BandKind.NewReading);
        (reading.Upper - reading.Lower).ShouldBeInRange(15, 25); // 2 · 1.753 · 5 and the band of the curve
        curve.TimeTo(30).ShouldBeOfType<Arrival<DateTimeOffset>.Already>().IsDemonstrated.ShouldBeTrue();
        curve.TimeTo(5).ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
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
        curve.TimeTo(10).ShouldBeOfType<Arrival<DateTimeOffset>.NotDetermined>();
        curve.AboveLimitCount.ShouldBe(3);
        curve.Options.FewestReadings.ShouldBe(4);
        var loop = new CleanupLoop(UnitsNet.Volume.FromLiters(100), UnitsNet.VolumeFlow.FromLitersPerMinute(1));
        new LoopPerformance(curve, loop).RemovalPerPass().Outcome.ShouldBe(CleanupFigureOutcome.TooFewAboveLimit);
    }

    [Fact]
    public void Options_that_the_likelihood_does_not_know_are_refused_with_what_to_do_instead()
    {
        var logarithmic = Should.Throw<ArgumentException>(() => C04(CleanupOptions.ForCounts));
        logarithmic.ParamName.ShouldBe("options");
        logarithmic.Message.ShouldContain("state Proportional noise");
        var robust = Should.Throw<ArgumentException>(() => C04(new CleanupOptions(robust: true)));
        robust.ParamName.ShouldBe("options");
        robust.Message.ShouldContain("leave those readings out");

        // A stated start of the fall is no part of the curve.
        C04(new CleanupOptions(startedAt: Runs.At(2))).LeftOutReadings.Count.ShouldBe(2);
    }

    /// <summary>A run of counts or water with known parts and its last readings below a limit: units, the clock and the order of the rows change nothing.</summary>
    [Theory]
    [InlineData(DecayNoise.Constant, null, 15.0)]
    [InlineData(DecayNoise.Proportional, null, 15.0)]
    [InlineData(DecayNoise.Proportional, 420.0, null)]
    [InlineData(DecayNoise.Proportional, null, null)]
    public void Units_the_clock_and_the_order_of_rows_change_nothing_beside_known_parts(
        DecayNoise noise,
        double? start,
        double? floor
    ) =>
        Gen.Select(Gen.Double[0.1, 50], Gen.Double[0.2, 5], Gen.Int[0, 1000], Gen.Int[-500, 500])
            .Holds(
                (unit, hours, seed, shift) =>
                {
                    var run = DecaySeries.Read("C04.csv");
                    var order = Enumerable.Range(0, run.Times.Length).ToArray();
                    new Random(seed).Shuffle(order);
                    CleanupCurve Fit(double unitOfValue, double unitOfTime, int from, int[] rows)
                    {
                        DateTimeOffset[] moments =
                        [
                            .. rows.Select(i => Runs.At(from).AddMinutes(Math.Round(60 * unitOfTime) * run.Times[i])),
                        ];
                        Reading[] readings =
                        [
                            .. rows.Select(i => new Reading(
                                unitOfValue * run.Values[i],
                                run.BelowLimit[i] ? Qualifier.LessThan : Qualifier.None
                            )),
                        ];
                        return CleanupCurve.Fit(
                            moments,
                            readings,
                            new CleanupOptions(noise, start: start * unitOfValue, floor: floor * unitOfValue)
                        );
                    }

                    var minutes = Math.Round(60 * hours) / 60;
                    var one = Fit(1, 1, 0, [.. Enumerable.Range(0, order.Length)]);
                    var other = Fit(unit, minutes, shift, order);
                    other.Status.ShouldBe(one.Status);
                    other.AboveLimitCount.ShouldBe(15);
                    (other.RatePerHour * minutes).ShouldBe(one.RatePerHour, 1e-7 * one.RatePerHour);
                    other.Floor.ShouldBe(one.Floor * unit, 1e-6 * one.Start * unit);
                    other.Start.ShouldBe(one.Start * unit, 1e-6 * one.Start * unit);
                    var (here, there) = (one.RateIntervalPerHour(), other.RateIntervalPerHour());
                    (there.Lower * minutes).ShouldBe(here.Lower, 1e-5 * here.Lower);
                    (there.Upper * minutes).ShouldBe(here.Upper, 1e-5 * here.Upper);
                    var (band, bandThere) = (
                        one.BandAt(Runs.At(10), BandKind.NewReading),
                        other.BandAt(Runs.At(shift + 10 * minutes), BandKind.NewReading)
                    );
                    bandThere.Upper.ShouldBe(band.Upper * unit, 1e-4 * band.Upper * unit);
                },
                iter: 6
            );

    [Fact]
    public void The_band_of_a_new_reading_grows_with_the_curve_where_the_scatter_does()
    {
        var curve = C04(new CleanupOptions(DecayNoise.Proportional));
        var (early, late) = (
            curve.BandAt(Runs.At(1), BandKind.NewReading),
            curve.BandAt(Runs.At(12), BandKind.NewReading)
        );

        // Student's 95 % for 15 − 3 readings, 1.782 (Fisher and Yates, table III); the band of the curve itself adds to it.
        var scatter = curve.ResidualStandardDeviation * Math.Sqrt(15.0 / 12);
        (early.Upper - early.Lower).ShouldBeGreaterThan(2 * 1.782 * scatter * curve.ValueAt(Runs.At(1)));
        (early.Upper - early.Lower).ShouldBeLessThan(2.6 * 1.782 * scatter * curve.ValueAt(Runs.At(1)));
        (late.Upper - late.Lower).ShouldBeLessThan(0.5 * (early.Upper - early.Lower));
    }

    [Fact]
    public void Counts_below_a_limit_are_fitted_with_the_scatter_in_proportion()
    {
        var run = DecaySeries.Read("C04.csv");
        var count = Measurands.All.First(one => one.Scale == NaturalScale.Logarithmic);
        var history = Invented.History(
            run.Times.Select(
                (t, i) =>
                    Invented.Sample(
                        i,
                        t / 24,
                        (count, new Reading(run.Values[i], run.BelowLimit[i] ? Qualifier.LessThan : Qualifier.None))
                    )
            )
        );
        var series = history.SampleSeries(count, Invented.Start, Invented.Start.AddDays(100));
        CleanupCurve.Fit(series).Options.Noise.ShouldBe(DecayNoise.Proportional);
    }

    [Fact]
    public void A_known_floor_or_rate_gives_the_ingress_its_whole_doubt()
    {
        var plant = new CleanupLoop(UnitsNet.Volume.FromLiters(100), UnitsNet.VolumeFlow.FromLitersPerMinute(1));
        var loop = new LoopPerformance(C04(new CleanupOptions(floor: 20)), plant);
        var ingress = loop.IngressPerHour(10);
        var rate = loop.Curve.RateIntervalPerHour();
        ingress.Method.ShouldBe(CleanupFigureMethod.Profile);
        ingress.Lower!.Value.ShouldBe(10 * rate.Lower!.Value, 1e-9);
        ingress.Upper!.Value.ShouldBe(10 * rate.Upper!.Value, 1e-9);

        loop = new LoopPerformance(C04(new CleanupOptions(ratePerHour: 0.15)), plant);
        ingress = loop.IngressPerHour(10);
        var floor = loop.Curve.FloorInterval();
        ingress.Method.ShouldBe(CleanupFigureMethod.Profile);
        ingress.Lower!.Value.ShouldBe(0.15 * (floor.Lower!.Value - 10), 1e-9);
        ingress.Upper!.Value.ShouldBe(0.15 * (floor.Upper!.Value - 10), 1e-9);
        loop.IngressPerHour(10, 0.95, IntervalSide.Upper).Upper!.Value.ShouldBe(ingress.Upper!.Value, 1e-6);
    }
}
