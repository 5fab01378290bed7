using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>What scatter, spacing and gaps of the readings do to a completion.</summary>
public class CompletionReadingTests
{
    private static CleanupMonitorOptions Options(double? target, string? code, double hold = 3, double gap = 3) =>
        CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(
                target is { } ppm ? LiveRuns.Ppm(ppm) : null,
                code is null ? null : CleanlinessCode.Parse(code)
            ),
            Invented.Curve,
            TimeSpan.FromHours(hold),
            LiveRuns.Celsius(45),
            TimeSpan.FromHours(gap)
        );

    private static double Hours(DateTimeOffset at) => (at - Invented.Start).TotalHours;

    /// <summary>Readings every 20 minutes with two hours missed in between are not 'too far apart' for a longest gap of one hour: those to come decide.</summary>
    [Fact]
    public void One_long_gap_is_not_the_usual_one()
    {
        var readings = Enumerable
            .Range(0, 22)
            .Select(i => i / 3.0)
            .Where(hour => hour is <= 3 or >= 5)
            .Select(hour =>
                LiveRuns.Sensor(hour, Runs.Exponential(hour, 250, 40, 0.2) + 0.3 * ((int)(3 * hour + 0.5) % 3 - 1))
            );

        CleanupMonitor
            .Of(Options(80, null, gap: 1), readings)
            .Status()
            .Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();
    }

    /// <summary>Water 250 to 40 mg/kg at 0.2 1/h every 20 minutes with a seeded scatter, and counts every half hour.</summary>
    private static List<CleanupReading> Log(double scatter, double until = 7, int seed = 4)
    {
        var random = new Random(seed);
        var log = new List<CleanupReading>();
        for (var i = 0; i <= 6 * until; i++)
        {
            var hour = i / 6.0;
            if (i % 2 == 0)
            {
                var ppm = Runs.Exponential(hour, 250, 40, 0.2) + scatter * Runs.Normal(random);
                log.Add(LiveRuns.Sensor(hour, ppm));
            }

            if (i % 3 == 0)
            {
                var at4 = Runs.Exponential(hour, 10_000, 100, 0.25) * Math.Exp(0.05 * Runs.Normal(random));
                log.Add(CleanupReading.OfParticles(Runs.At(hour), new ParticleLevels(at4, 0.2 * at4, 10)));
            }
        }

        return log;
    }

    /// <summary>
    /// The early end of the whole is too late when that of either part is (Bonferroni, general knowledge, from memory): of two parts each takes half the doubt,
    /// which is the end of the water alone at 95 % for the water in two at 90 %.
    /// </summary>
    [Fact]
    public void Of_two_parts_each_early_end_takes_half_the_doubt()
    {
        var log = Log(2);
        var both = CleanupMonitor.Of(Options(80, "17/-/-"), log).Status(0.9).Parts[0];
        var alone = CleanupMonitor.Of(Options(80, null), log);

        both.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();
        Hours(both.Arrival.Earliest()).ShouldBe(Hours(alone.Status(0.95).Arrival.Earliest()), 1e-6);
        both.Arrival.Earliest().ShouldBeLessThan(alone.Status(0.9).Arrival.Earliest());
    }

    /// <summary>
    /// Late comes of two things: where the curve crosses, and which of the readings to come is the last above. Together they are more than each; readings without a scatter to
    /// come and a curve without doubt would leave only the other.
    /// </summary>
    [Fact]
    public void Late_is_the_doubt_of_the_curve_and_that_of_the_readings_to_come()
    {
        var status = CleanupMonitor.Of(Options(80, null), Log(2)).Status();
        var crossing = status.CurveArrival.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();
        var ofCurve = (crossing.Latest - crossing.Estimate).TotalHours;
        var late = (status.Arrival.Latest() - status.Arrival.Estimate()).TotalHours;

        late.ShouldBeGreaterThan(1.05 * ofCurve);

        // The more the readings scatter, the more they add: by Pythagoras, in hours of the run.
        Math.Sqrt(late * late - ofCurve * ofCurve).ShouldBeGreaterThan(1 / 3.0 - 1e-6);
    }

    /// <summary>A hold that has not begun cannot end before the holding time is over from now on; one that has, not before it is over from its begin.</summary>
    [Fact]
    public void No_early_end_before_the_holding_time_is_over()
    {
        var dated = 0;
        for (var seed = 0; seed < 10; seed++)
        {
            foreach (var hour in new[] { 6, 7, 7.5, 8, 8.5, 9 })
            {
                var status = CleanupMonitor.Of(Options(80, null), Log(6, hour, seed)).Status();
                if (status.Arrival is Arrival<DateTimeOffset>.Expected or Arrival<DateTimeOffset>.NotBefore)
                {
                    dated++;
                    var begin = status.HoldingSince ?? status.AsOf;
                    Hours(status.Arrival.Earliest()).ShouldBeGreaterThanOrEqualTo(Hours(begin) + 3 - 1e-6);
                }
            }
        }

        dated.ShouldBeGreaterThan(30);
    }

    /// <summary>A gap as long as the longest does not break a hold, and a hold as long as the holding time is one: readings at 1, 2, 3 and 4 h, hold 3 h, gap 1 h.</summary>
    [Fact]
    public void The_ends_of_gap_and_holding_time_belong_to_them()
    {
        var monitor = CleanupMonitor.Of(
            Options(80, null, gap: 1),
            Enumerable.Range(1, 3).Select(hour => LiveRuns.Sensor(hour, 50))
        );
        monitor.Status().HoldingSince.ShouldBe(Runs.At(1));
        monitor.Status().IsMet.ShouldBeFalse();

        monitor.Take(LiveRuns.Sensor(4, 50));
        monitor.Status().IsMet.ShouldBeTrue();
        monitor.Status().MetAt.ShouldBe(Runs.At(4));
    }
}
