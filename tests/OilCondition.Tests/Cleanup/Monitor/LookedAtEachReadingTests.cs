using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>Runs of a known truth, asked after each of their readings: one wrong answer in a run is a wrong run.</summary>
public class LookedAtEachReadingTests
{
    private static CleanupMonitorOptions Options(double target, double hold = 2) =>
        CleanupMonitorOptions.ReferredTo(
            Invented.Start,
            new TreatmentTarget(LiveRuns.Ppm(target)),
            Invented.Curve,
            TimeSpan.FromHours(hold),
            LiveRuns.Celsius(20),
            TimeSpan.FromHours(24)
        );

    private static CleanupReading Titration(double hour, double ppm, double celsius = 60) =>
        CleanupReading.Titration(Runs.At(hour), LiveRuns.Ppm(ppm), LiveRuns.Celsius(celsius));

    /// <summary>300 to a level of 30 to 90 % of the target of 100, scatter 3 %, 48 readings over four time constants, 100 runs.</summary>
    [Fact]
    public void A_true_exponential_is_neither_stalled_nor_reached_too_early()
    {
        var random = new Random(401);
        var (stalled, early, curveEarly, met) = (0, 0, 0, 0);
        const int All = 100;
        for (var run = 0; run < All; run++)
        {
            var level = 30 + 60 * random.NextDouble();
            var truth = Math.Log((300 - level) / (100 - level)) / 0.17;
            var monitor = new CleanupMonitor(Options(100));
            var (isStalled, isEarly, isCurveEarly) = (false, false, false);
            CleanupStatus? status = null;
            for (var i = 0; i < 48; i++)
            {
                var hour = i / 2.0;
                monitor.Take(
                    Titration(hour, Runs.Exponential(hour, 300, level, 0.17) * (1 + 0.03 * Runs.Normal(random)))
                );
                status = monitor.Status();
                isStalled |= status.Phase == CleanupPhase.Stalled;
                isEarly |= hour < truth && status.Phase == CleanupPhase.AtTarget;
                isCurveEarly |= hour < truth && status.CurveArrival is Arrival<DateTimeOffset>.Already;
            }

            stalled += isStalled ? 1 : 0;
            early += isEarly ? 1 : 0;
            curveEarly += isCurveEarly ? 1 : 0;
            met += status!.IsMet ? 1 : 0;
        }

        stalled.ShouldBeLessThanOrEqualTo((int)(0.03 * All));
        early.ShouldBeLessThanOrEqualTo((int)(0.03 * All));
        curveEarly.ShouldBeLessThanOrEqualTo((int)(0.03 * All));

        // And it does get there: levels close to the target take longer than these 24 h to be shown.
        met.ShouldBeGreaterThanOrEqualTo((int)(0.8 * All));
    }

    /// <summary>A real stall at 130 of 100 is still called, within 8 h of nine tenths of the fall, which are over after ln 10/0.2 = 11.5 h.</summary>
    [Fact]
    public void A_real_stall_is_called_in_good_time()
    {
        var random = new Random(402);
        var late = 0;
        for (var run = 0; run < 40; run++)
        {
            var monitor = new CleanupMonitor(Options(100));
            double? called = null;
            for (var hour = 0.0; hour <= 36 && called is null; hour += 0.5)
            {
                monitor.Take(Titration(hour, Runs.Exponential(hour, 300, 130, 0.2) * (1 + 0.03 * Runs.Normal(random))));
                called = monitor.Status().Phase == CleanupPhase.Stalled ? hour : null;
            }

            called.ShouldNotBeNull();
            late += called > 19.5 ? 1 : 0;
        }

        late.ShouldBeLessThanOrEqualTo(4);
    }

    /// <summary>Three readings within 2 % below the target, with a scatter of 4, hold for the holding time and prove nothing.</summary>
    [Fact]
    public void A_lucky_hold_is_not_the_target()
    {
        double[] ppm = [112, 99, 107, 103, 111, 98, 105, 101, 109, 104, 99, 98, 99];
        var monitor = CleanupMonitor.Of(Options(100, 1), ppm.Select((one, i) => Titration(i / 2.0, one)));

        var status = monitor.Status();
        status.IsHolding.ShouldBeTrue();
        status.HoldEndsAt!.Value.ShouldBeLessThanOrEqualTo(status.AsOf);
        status.Phase.ShouldBe(CleanupPhase.Holding);
        status.MetAt.ShouldBeNull();
        status.Reason.ShouldBe(CompletionReason.NotYetShown);
        status
            .Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.NotBefore>()
            .Earliest.ShouldBeGreaterThanOrEqualTo(status.AsOf);

        // What was never met is not lost either.
        monitor.Take(Titration(6.5, 104));
        monitor.Status().ReboundAt.ShouldBeNull();
        monitor.Status().Phase.ShouldBe(CleanupPhase.Falling);
    }

    /// <summary>Without a curve a reading is good to a tenth of the target: 95 and 94 of 100 do not show it, 70 and 75 do.</summary>
    [Theory]
    [InlineData(95, 94, CleanupPhase.Holding)]
    [InlineData(70, 75, CleanupPhase.AtTarget)]
    public void Two_samples_show_a_target_only_with_room(double first, double second, CleanupPhase expected) =>
        CleanupMonitor
            .Of(Options(100), [Titration(20, first), Titration(24, second)])
            .Status()
            .Phase.ShouldBe(expected);
}
