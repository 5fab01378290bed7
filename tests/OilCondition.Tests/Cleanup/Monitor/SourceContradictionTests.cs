using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>Sensor and titrations of one run that contradict each other, worked by hand and by simulation.</summary>
public class SourceContradictionTests
{
    private const double Celsius = 50;

    private static double Truth(double hour) => Runs.Exponential(hour, 280, 60, 0.3);

    /// <summary>60 + 220 exp(−0.3 t) mg/kg every half hour for ten hours, hardly any scatter; titrations at 2, 4, 6 and 8 h.</summary>
    private static CleanupStatus Run(Func<double, double> titrated, double scatter = 0.01, int seed = 1)
    {
        var random = new Random(seed);
        var readings = Enumerable
            .Range(0, 21)
            .Select(i => LiveRuns.Sensor(i / 2.0, Truth(i / 2.0) + scatter * Runs.Normal(random), Celsius))
            .Concat(
                new[] { 2.0, 4, 6, 8 }.Select(hour =>
                    CleanupReading.Titration(Runs.At(hour), LiveRuns.Ppm(titrated(hour)), LiveRuns.Celsius(Celsius))
                )
            );
        return CleanupMonitor.Of(LiveRuns.Warm(80), readings).Status();
    }

    /// <summary>
    /// Contents 180.74, 126.26, 96.37, 79.96 mg/kg, mean 120.83; titrations 1.3 times that, mean 157.08. S(50 °C) = 292.1 mg/kg (two-point line by hand), so the sensor
    /// is good to 5.84; mean((0.1 sample)²)/4 = 67.9; 2 √(67.9 + 34.1) = 20.2.
    /// </summary>
    [Fact]
    public void Titrations_a_third_higher_contradict_the_sensor()
    {
        var status = Run(hour => 1.3 * Truth(hour));

        var apart = status.Contradiction.ShouldNotBeNull();
        apart.Count.ShouldBe(4);
        apart.SampleMean.ShouldBe(157.08, 0.01);
        apart.SensorMean.ShouldBe(120.83, 0.05);
        apart.Difference.ShouldBe(36.25, 0.05);
        apart.Uncertainty.ShouldBe(20.2, 0.05);
        apart.ToString().ShouldBe("samples read 40 ± 20 mg/kg higher than the sensor (4 readings)");
        status.FollowsSensor.ShouldBeTrue();
        status.ToString().ShouldEndWith("; samples read 40 ± 20 mg/kg higher than the sensor (4 readings)");

        // The curve is that of the sensor alone.
        status.Curve.Count.ShouldBe(21);
        status.Curve.Floor.ShouldBe(60, 0.1);
    }

    [Fact]
    public void Titrations_a_third_lower_contradict_it_as_well() =>
        Run(hour => 0.65 * Truth(hour)).Contradiction.ShouldNotBeNull().Difference.ShouldBe(-42.29, 0.05);

    /// <summary>A tenth more is what two laboratories differ by: 12.1 mg/kg beside 2 √(48.6 + 34.1) = 18.2.</summary>
    [Fact]
    public void A_tenth_more_is_no_contradiction() => Run(hour => 1.1 * Truth(hour)).Contradiction.ShouldBeNull();

    /// <summary>The roles change with the number of readings: many titrations are followed, and the few sensor readings are compared with them.</summary>
    [Fact]
    public void Few_sensor_readings_are_compared_with_the_curve_of_many_titrations()
    {
        var readings = Enumerable
            .Range(0, 21)
            .Select(i =>
                CleanupReading.Titration(
                    Runs.At(i / 2.0),
                    LiveRuns.Ppm(Truth(i / 2.0) + 0.01 * (i % 3 - 1)),
                    LiveRuns.Celsius(Celsius)
                )
            )
            .Concat(new[] { 2.0, 4, 6, 8 }.Select(hour => LiveRuns.Sensor(hour + 0.01, 0.6 * Truth(hour), Celsius)));
        var status = CleanupMonitor.Of(LiveRuns.Warm(80), readings).Status();

        status.FollowsSensor.ShouldBeFalse();
        var apart = status.Contradiction.ShouldNotBeNull();
        apart.Count.ShouldBe(4);
        apart.SensorMean.ShouldBe(0.6 * 120.83, 0.1);
        apart.Difference.ShouldBe(0.4 * 120.83, 0.5);
    }

    [Fact]
    public void One_titration_alone_contradicts_nothing()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(80), LiveRuns.WholeRun(20));
        monitor.Take(CleanupReading.Titration(Runs.At(15), LiveRuns.Ppm(500), LiveRuns.Celsius(Celsius)));

        monitor.Status().Contradiction.ShouldBeNull();
    }

    /// <summary>While the sensor stands at saturation a titration that finds more is what is expected: free water.</summary>
    [Fact]
    public void Free_water_above_a_saturated_sensor_is_no_contradiction()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(80), LiveRuns.WholeRun(20));
        monitor.Take(CleanupReading.Titration(Runs.At(8.6), LiveRuns.Ppm(900), LiveRuns.Celsius(46)));
        monitor.Take(CleanupReading.Titration(Runs.At(9.2), LiveRuns.Ppm(700), LiveRuns.Celsius(47)));

        monitor.Status().Contradiction.ShouldBeNull();
    }

    /// <summary>Titrations without bias that scatter by 10 % and a sensor that is right: of 300 runs at most one in twenty is called a contradiction.</summary>
    [Fact]
    public void Sources_that_agree_are_seldom_called_contradictory()
    {
        var alarms = 0;
        for (var seed = 0; seed < 300; seed++)
        {
            var random = new Random(5000 + seed);
            var status = Run(hour => Truth(hour) * (1 + 0.1 * Runs.Normal(random)), scatter: 2, seed);
            alarms += status.Contradiction is null ? 0 : 1;
        }

        (alarms / 3.0).ShouldBeLessThanOrEqualTo(5);
    }

    [Fact]
    public void The_assessment_makes_a_finding_of_it_with_a_sentence_and_something_to_do()
    {
        var saturation = Invented.Curve.SaturationAt(LiveRuns.Celsius(Celsius)).Content.PartsPerMillion;
        var rows = Enumerable
            .Range(0, 21)
            .Select(i => new SensorReading(
                Runs.At(i / 2.0),
                new Dictionary<Measurand, Reading>
                {
                    [Measurands.RelativeSaturation] = new(Math.Round(100 * Truth(i / 2.0) / saturation, 2)),
                    [Measurands.OilTemperature] = new(Celsius),
                }
            ));
        var samples = new[] { 2.0, 4, 6, 8 }.Select(hour => new OilSample(
            FormattableString.Invariant($"KF{hour}"),
            Runs.At(hour),
            new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(Math.Round(1.3 * Truth(hour))) }
        ));
        var run = new TreatmentRun(Invented.Start, null, TreatmentKind.VacuumDehydration, Measurands.WaterContent, 80);
        var limits = new LimitSet(
            "test",
            [
                new Limit(
                    Measurands.WaterContent,
                    LimitKind.Absolute,
                    new LimitBand(500, 800),
                    null,
                    Source.CommonPractice("invented")
                ),
            ]
        );
        var assessment = ConditionAssessor.Assess(
            OilHistory.Create(Invented.Machine, samples, rows, [run]),
            limits,
            new AssessmentOptions(Runs.At(10))
        );

        var finding = assessment.Findings.Single(one => one.Code == FindingCode.CleanupSourcesDisagree);
        finding.Severity.ShouldBe(Severity.Alert);
        finding.Evidence.Single(item => item.Name == "samples less sensor").Text.ShouldBe("40");
        Sentences
            .English.Of(finding)
            .ShouldBe(
                "Water content during the cleanup: samples read 40 ± 20 mg/kg higher than the sensor (4 readings); check the sensor, the oil's saturation curve "
                    + "and the samples before either is believed (the forecast follows the sensor)."
            );
        assessment.Recommendations.ShouldContain(one => one.Action == RecommendedAction.SampleAgain);
        assessment.ToJson().ShouldContain("\"contradiction\"");
    }
}
