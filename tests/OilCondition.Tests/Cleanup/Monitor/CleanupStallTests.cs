using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>Runs that are flat from their first reading: invented, with seeded scatter.</summary>
public class CleanupStallTests
{
    /// <summary>Every half hour at 90 mg/kg with a scatter of 1.</summary>
    private static IEnumerable<CleanupReading> Flat(
        double hours,
        double celsius = 50,
        double step = 0.5,
        double scatter = 1,
        double perHour = 0,
        int seed = 7
    )
    {
        var random = new Random(seed);
        for (var hour = 0.0; hour <= hours + 1e-9; hour += step)
        {
            yield return LiveRuns.Sensor(hour, 90 + perHour * hour + scatter * Runs.Normal(random), celsius);
        }
    }

    private static CleanupStatus At(IEnumerable<CleanupReading> readings, CleanupMonitorOptions? options = null) =>
        CleanupMonitor.Of(options ?? LiveRuns.Warm(60), readings).Status();

    private static CleanupMonitorOptions After(double hours) =>
        CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(LiveRuns.Ppm(60)),
            Invented.Curve,
            TimeSpan.FromHours(4),
            LiveRuns.Celsius(45),
            stallAfter: TimeSpan.FromHours(hours)
        );

    /// <summary>A day by default, and no sooner.</summary>
    [Theory]
    [InlineData(20, CleanupPhase.Falling)]
    [InlineData(23.5, CleanupPhase.Falling)]
    [InlineData(24, CleanupPhase.Stalled)]
    [InlineData(40, CleanupPhase.Stalled)]
    public void A_run_without_a_fall_is_stalled_after_the_stated_time(double hours, CleanupPhase expected) =>
        At(Flat(hours)).Phase.ShouldBe(expected);

    [Fact]
    public void The_time_is_the_users()
    {
        At(Flat(12), After(12)).Phase.ShouldBe(CleanupPhase.Stalled);
        At(Flat(30), After(36)).Phase.ShouldBe(CleanupPhase.Falling);
        LiveRuns.Warm().StallAfter.TotalHours.ShouldBe(24);
    }

    /// <summary>Mean 90, nothing gone: the upper end of the fall lies under half of the 30 mg/kg that are missing.</summary>
    [Fact]
    public void It_is_named_with_its_figures()
    {
        var status = At(Flat(24));

        status.StallSign.ShouldBe(StallSign.ShowsNoFall);
        status.StalledPart.ShouldBe(Measurands.WaterContent);
        double Figure(string name) => status.StallEvidence.Single(one => one.Name == name).Value!.Value;
        Figure("readings without a fall").ShouldBe(49);
        Figure("over").ShouldBe(24, 1e-9);
        Figure("mean").ShouldBe(90, 0.6);
        Figure("fall by a straight line").ShouldBeInRange(-1.5, 1.5);
        Figure("upper end of the fall").ShouldBeInRange(Figure("fall by a straight line"), 3);
        Figure("target").ShouldBe(60, 1e-9);
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        CleanupRecord
            .Of(status, new CleanupRunFacts("HP-TGB1", LiveRuns.Loop, LiveRuns.Oil870, LiveRuns.Ppm(90)))
            .Verdict.ShouldBe(CleanupVerdict.Stalled);
    }

    /// <summary>A week of flat readings in cold oil is warming, with the oil warmed at last nothing is known yet.</summary>
    [Fact]
    public void Not_while_it_warms()
    {
        At(Flat(168, celsius: 30)).Phase.ShouldBe(CleanupPhase.Warming);

        var warmed = At(Flat(100, celsius: 30).Concat([LiveRuns.Sensor(101, 90), LiveRuns.Sensor(102, 90)]));
        warmed.Phase.ShouldBe(CleanupPhase.Falling);
        warmed.StallSign.ShouldBe(StallSign.None);
    }

    /// <summary>Five readings over a day and a half are too few; six are enough.</summary>
    [Theory]
    [InlineData(28, CleanupPhase.Falling)]
    [InlineData(35, CleanupPhase.Stalled)]
    public void Not_before_there_are_enough_readings(double hours, CleanupPhase expected) =>
        At(
            Flat(hours, step: 7, scatter: 0.2),
            CleanupMonitorOptions.WhileWarm(
                Invented.Start,
                new TreatmentTarget(LiveRuns.Ppm(60)),
                Invented.Curve,
                TimeSpan.FromHours(8),
                LiveRuns.Celsius(45)
            )
        )
            .Phase.ShouldBe(expected);

    /// <summary>With a scatter of 15 about 90, seven readings exclude neither 85 nor half of the way there.</summary>
    [Fact]
    public void Not_where_the_readings_scatter_too_much_to_say() =>
        At(Flat(42, step: 7, scatter: 15), LiveRuns.Warm(85)).StallSign.ShouldBe(StallSign.None);

    /// <summary>300 to 20 mg/kg at 0.01 1/h: 60 mg/kg of 240 are gone in a day. Slow is not stalled.</summary>
    [Fact]
    public void A_slow_fall_is_not_stalled()
    {
        var random = new Random(3);
        var readings = Enumerable
            .Range(0, 60)
            .Select(i => LiveRuns.Sensor(i / 2.0, Runs.Exponential(i / 2.0, 240, 20, 0.01) + Runs.Normal(random)));

        At(readings).Phase.ShouldBe(CleanupPhase.Falling);
    }

    /// <summary>5 mg/kg of 30 gone in 30 h, shown beyond the scatter: more than a tenth.</summary>
    [Fact]
    public void A_fall_of_a_sixth_of_the_way_is_a_fall() =>
        At(Flat(30, scatter: 0.2, perHour: -5 / 30.0)).StallSign.ShouldBe(StallSign.None);

    /// <summary>1 mg/kg of 30 in 30 h is shown as well, by a sensor that hardly scatters, and is none.</summary>
    [Fact]
    public void A_drift_of_a_thirtieth_of_the_way_is_no_fall() =>
        At(Flat(30, scatter: 0.2, perHour: -1 / 30.0)).StallSign.ShouldBe(StallSign.ShowsNoFall);

    /// <summary>
    /// 61 readings, each half an hour, above and below a line by turns, so that the line through them has its slope: s = scatter √(61/59), Sxx = 61 (61² − 1)/12
    /// (1/2)² = 4728 h², Student's quantile of 95 % for 59 is 1.671 (tables). 10 mg/kg in 30 h with a scatter of 12: 10 ± 1.671 × 12.2/√4728 × 30 = 1.1 to 18.9 of the 30
    /// that are missing, and half of them are not excluded. 5 with a scatter of 5: 1.3 to 8.7, and they are.
    /// </summary>
    [Theory]
    [InlineData(10, 12, false)]
    [InlineData(5, 5, true)]
    public void Half_of_the_way_must_be_excluded(double fall, double scatter, bool isStalled) =>
        At(
            Enumerable
                .Range(0, 61)
                .Select(i => LiveRuns.Sensor(i / 2.0, 90 - fall * i / 60 + scatter * (i % 2 == 0 ? 1 : -1)))
        )
            .IsStalled.ShouldBe(isStalled);

    /// <summary>It levels off at 60 over a target of 59; a reading of 58 begins a hold, and while that lasts nothing is stalled.</summary>
    [Fact]
    public void What_holds_is_not_stalled()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(59), LiveRuns.WholeRun());
        monitor.Status().StallSign.ShouldBe(StallSign.LevelsOff);

        monitor.Take(LiveRuns.Sensor(30.5, 58));

        monitor.Status().Phase.ShouldBe(CleanupPhase.Holding);
        monitor.Status().StallSign.ShouldBe(StallSign.None);
        monitor.Status().StallEvidence.ShouldBeEmpty();
    }

    [Fact]
    public void A_rise_is_no_fall() => At(Flat(30, perHour: 0.3)).Phase.ShouldBe(CleanupPhase.Stalled);

    [Fact]
    public void At_the_target_it_holds() => At(Flat(30), LiveRuns.Warm(110)).Phase.ShouldBe(CleanupPhase.AtTarget);

    [Fact]
    public void Counts_that_do_not_fall_stall_the_job_by_name()
    {
        var random = new Random(5);
        var monitor = CleanupMonitor.Of(
            CleanupMonitorOptions.WhileWarm(
                Invented.Start,
                new TreatmentTarget(LiveRuns.Ppm(100), CleanlinessCode.Parse("-/15/12")),
                Invented.Curve,
                TimeSpan.FromHours(4),
                LiveRuns.Celsius(45)
            ),
            LiveRuns.WholeRun()
        );
        for (var hour = 0.0; hour <= 30; hour++)
        {
            var at6 = 1200 * Math.Exp(0.05 * Runs.Normal(random));
            monitor.Take(CleanupReading.OfParticles(Runs.At(hour), new ParticleLevels(5000, at6, 20)));
        }

        // 1200 per mL at 6 µm(c), where 15 ends at 320; at 14 µm(c) 20 are below the 40 of 12.
        var status = monitor.Status();
        status.Phase.ShouldBe(CleanupPhase.Stalled);
        status.StalledPart.ShouldBe(Measurands.Particles6);
        status.StallEvidence.Single(one => one.Name == "mean").Value!.Value.ShouldBe(1200, 30);
        status.StallEvidence.Single(one => one.Name == "fall by a straight line").Unit.ShouldBe("%");
        status.RulingPart.ShouldBe(Measurands.Particles6);
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
    }

    /// <summary>Flat runs of any scatter, drift and density, given whole, shuffled, and one by one with a question after each reading.</summary>
    [Theory]
    [InlineData(16)]
    [InlineData(1024)]
    public void One_by_one_ends_where_the_whole_log_ends(int mostCells) =>
        Gen.Select(Gen.Double[0, 5], Gen.Double[-0.2, 0.2], Gen.Double[0.5, 4], Gen.Int[0, 1_000_000])
            .Holds(
                (scatter, perHour, step, seed) =>
                {
                    var options = LiveRuns.Warm(60, mostCells: mostCells);
                    var log = Flat(30, scatter: scatter, perHour: perHour, step: step, seed: seed).ToList();
                    var monitor = new CleanupMonitor(options);
                    foreach (var reading in log)
                    {
                        monitor.Take(reading);
                        monitor.Status().Phase.ShouldNotBe(CleanupPhase.NoReadings);
                    }

                    var random = new Random(seed);
                    var shuffled = log.Select(one => (one, random.Next())).OrderBy(one => one.Item2);
                    var answers = LiveRuns.Answers(monitor.Status());
                    LiveRuns.Answers(At(log, options)).ShouldBe(answers);
                    LiveRuns.Answers(At(shuffled.Select(one => one.one), options)).ShouldBe(answers);
                },
                iter: 12
            );
}
