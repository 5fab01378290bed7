using CsCheck;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Curve;

/// <summary>The unit of time or water, the order of the rows and the clock change nothing; nothing that is asked is ever not a number.</summary>
public class CleanupPropertyTests
{
    private static readonly CleanupLoop Loop = new(Volume.FromLiters(500), VolumeFlow.FromLitersPerMinute(5));

    /// <summary>A run of whole minutes with an occasional slow start, and its readings.</summary>
    private static readonly Gen<(int[] Minutes, double[] Values)> Run =
        from count in Gen.Int[6, 20]
        from gaps in Gen.Int[5, 120].Array[count]
        from floor in Gen.Double[0, 200]
        from rate in Gen.Double[0.5, 5]
        from slow in Gen.Int[0, 4]
        from scatter in Gen.Double[-25, 25].Array[count]
        select Make(gaps, floor, rate, slow, scatter);

    private static (int[] Minutes, double[] Values) Make(
        int[] gaps,
        double floor,
        double rate,
        int slow,
        double[] scatter
    )
    {
        var minutes = new int[gaps.Length];
        for (var i = 1; i < gaps.Length; i++)
        {
            minutes[i] = minutes[i - 1] + gaps[i];
        }

        double from = slow == 4 ? minutes[gaps.Length / 3] : 0;
        double span = minutes[^1] - from;
        return (
            minutes,
            [
                .. minutes.Select(
                    (t, i) =>
                        Math.Max(0, Runs.Exponential(Math.Max(0, t - from), 1000, floor, rate / span) + scatter[i])
                ),
            ]
        );
    }

    private static CleanupCurve Fit(int[] minutes, double[] values, double timeUnit = 1) =>
        CleanupCurve.Fit(Runs.Moments(minutes.Select(minute => minute / 60.0 * timeUnit)), values);

    [Fact]
    public void The_unit_of_water_changes_nothing() =>
        Run.Holds(
            run =>
            {
                var one = Fit(run.Minutes, run.Values);
                var other = Fit(run.Minutes, [.. run.Values.Select(value => value * 1e-4)]);

                other.Status.ShouldBe(one.Status);
                other.UsedReadings.ShouldBe(one.UsedReadings);
                other.RatePerHour.ShouldBe(one.RatePerHour, 1e-6 * one.RatePerHour);
                other.Floor.ShouldBe(one.Floor * 1e-4, 1e-4 * 1e-4);
                var ingress = new LoopPerformance(one, Loop).IngressPerHour(10);
                var scaled = new LoopPerformance(other, Loop).IngressPerHour(10e-4);
                scaled.Outcome.ShouldBe(ingress.Outcome);
                (scaled.Upper ?? 0).ShouldBe(
                    (ingress.Upper ?? 0) * 1e-4,
                    1e-5 * Math.Max(1e-4, (ingress.Upper ?? 0) * 1e-4)
                );
                other.TimeTo(100e-4).GetType().ShouldBe(one.TimeTo(100).GetType());
            },
            iter: 60
        );

    [Fact]
    public void The_unit_of_time_changes_nothing() =>
        Run.Holds(
            run =>
            {
                var one = Fit(run.Minutes, run.Values);
                var other = Fit(run.Minutes, run.Values, timeUnit: 24);

                other.Status.ShouldBe(one.Status);
                other.UsedReadings.ShouldBe(one.UsedReadings);
                other.RatePerHour.ShouldBe(one.RatePerHour / 24, 1e-6 * one.RatePerHour);
                other.Floor.ShouldBe(one.Floor, 1e-4);
                other.ObservedTimeConstants.ShouldBe(one.ObservedTimeConstants, 1e-5);
                var most = new LoopPerformance(one, Loop).IngressPerHour(10).Upper ?? 0;
                (new LoopPerformance(other, Loop).IngressPerHour(10).Upper ?? 0).ShouldBe(most / 24, 1e-5 * (1 + most));
            },
            iter: 60
        );

    [Fact]
    public void The_order_of_rows_and_the_clock_change_nothing() =>
        Gen.Select(Run, Gen.Int[-5000, 5000], Gen.Int[-12, 12], Gen.Int)
            .Holds(
                (run, days, offset, seed) =>
                {
                    var moments = Runs.Moments(run.Minutes.Select(minute => minute / 60.0));
                    var random = new Random(seed);
                    int[] order = [.. Enumerable.Range(0, moments.Length).OrderBy(_ => random.Next())];
                    var one = CleanupCurve.Fit(moments, run.Values);
                    var other = CleanupCurve.Fit(
                        [.. order.Select(i => moments[i].AddDays(days).ToOffset(TimeSpan.FromHours(offset)))],
                        [.. order.Select(i => run.Values[i])]
                    );

                    other.RatePerHour.ShouldBe(one.RatePerHour);
                    other.Floor.ShouldBe(one.Floor);
                    other.UsedReadings.Select(i => order[i]).ShouldBe(one.UsedReadings);
                    other.LeftOutReadings.Select(each => order[each]).ShouldBe(one.LeftOutReadings);
                    (other.Origin - one.Origin).TotalDays.ShouldBe(days, 1e-9);
                    var (a, b) = (one.TimeTo(100), other.TimeTo(100));
                    b.GetType().ShouldBe(a.GetType());
                    if (a is Arrival<DateTimeOffset>.Expected first && b is Arrival<DateTimeOffset>.Expected second)
                    {
                        (second.Latest - first.Latest).TotalDays.ShouldBe(days, 1e-6);
                    }
                },
                iter: 60
            );

    /// <summary>Odd series: flat, rising, few, zeros, ties in time, bounds of both kinds.</summary>
    [Fact]
    public void Whatever_the_readings_every_answer_is_a_finite_number_or_a_named_case()
    {
        var gen =
            from count in Gen.Int[0, 14]
            from hours in Gen.Int[0, 12].Array[count]
            from values in Gen.OneOf(
                Gen.Double[0, 1000],
                Gen.Const(45.0),
                Gen.Const(0.0),
                Gen.Double[999_990, 1_000_000]
            ).Array[count]
            from marks in Gen.Int[0, 9].Array[count]
            from noise in Gen.Int[0, 2]
            select (hours, values, marks, noise);
        gen.Holds(
            odd =>
            {
                Reading[] readings =
                [
                    .. odd.values.Select(
                        (value, i) =>
                            new Reading(
                                odd.noise == 2 ? value + 1 : value,
                                odd.marks[i] == 0 ? Qualifier.GreaterThan
                                    : odd.marks[i] == 1 && odd.noise == 0 && odd.hours.Length < 8 ? Qualifier.LessThan
                                    : Qualifier.None
                            )
                    ),
                ];
                var options = new CleanupOptions((DecayNoise)odd.noise, freeWaterAbove: 950);
                var curve = CleanupCurve.Fit(Runs.Moments(odd.hours.Select(hour => (double)hour)), readings, options);
                (curve.UsedReadings.Count + curve.LeftOutReadings.Count).ShouldBe(odd.hours.Length);
                double[] numbers =
                [
                    curve.RatePerHour,
                    curve.Start,
                    curve.Floor,
                    curve.ObservedTimeConstants,
                    curve.ResidualAutocorrelation,
                    .. Ends(curve.RateIntervalPerHour()),
                    .. Ends(curve.HalfLifeIntervalHours()),
                    .. Ends(curve.FloorInterval()),
                    .. Ends(curve.IntervalAt(curve.Origin.AddHours(3))),
                    .. Ends(curve.BandAt(curve.Origin.AddHours(3), BandKind.NewReading)),
                ];
                numbers.ShouldAllBe(number => double.IsFinite(number));
                foreach (var side in Enum.GetValues<IntervalSide>())
                {
                    curve.TimeTo(30, 0.9).ShouldNotBeNull();
                    var performance = new LoopPerformance(curve, Loop);
                    Finite(performance.IngressPerHour(20, 0.9, side));
                    double.IsFinite(performance.RemovalPerPass(0.9, side).Upper?.DecimalFractions ?? 0).ShouldBeTrue();
                    var water = new WaterAccount(curve, Loop.Charge, Density.FromKilogramsPerCubicMeter(870));
                    var drawn = water.DrawnOff(
                        curve.Origin,
                        curve.Origin.AddHours(2),
                        MassFraction.FromPartsPerMillion(5),
                        0.9,
                        side
                    );
                    foreach (var litres in new[] { drawn.Lower, drawn.Upper, drawn.Estimate })
                    {
                        double.IsFinite(litres?.Liters ?? 0).ShouldBeTrue();
                    }
                }
            },
            iter: 100
        );
    }

    private static double[] Ends(Interval interval) => [interval.Lower ?? 0, interval.Upper ?? 0];

    private static void Finite(CleanupFigure<double> figure) =>
        double.IsFinite((figure.Lower ?? 0) + (figure.Upper ?? 0) + (figure.Estimate ?? 0)).ShouldBeTrue();
}
