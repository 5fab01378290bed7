using CsCheck;
using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>A run as the records of a machine state it: the assessment says what a monitor says that takes its readings one by one.</summary>
public class RunInRecordsTests
{
    private static readonly Measurand Varnish = new(
        "site-varnish",
        "varnish by the site's method",
        "units",
        LimitSide.Upper,
        NaturalScale.Linear,
        0,
        1000
    );

    private sealed record Drawn(double Start, double Floor, double Rate, double Bias, int Titrations, int Seed);

    private static readonly Gen<Drawn> Runs =
        from start in Gen.Double[150, 280]
        from floor in Gen.Double[10, 90]
        from rate in Gen.Double[0.02, 0.4]
        from bias in Gen.Double[0.7, 1.4]
        from titrations in Gen.Int[0, 40]
        from seed in Gen.Int[0, 100_000]
        select new Drawn(start, floor, rate, bias, titrations, seed);

    private static Machine Of(bool hasCurve) =>
        new(
            "M1",
            "invented machine",
            hasCurve ? Invented.Oil : new Oil("invented oil", new Dictionary<Measurand, Reading>()),
            Volume.FromLiters(1000),
            Temperature.FromDegreesCelsius(60),
            Temperature.FromDegreesCelsius(20)
        );

    private static CleanupStatus Assessed(
        Machine machine,
        Measurand measurand,
        double target,
        IEnumerable<SensorReading> rows,
        IEnumerable<OilSample> samples,
        double hours
    ) => Assessment(machine, measurand, target, rows, samples, hours).Cleanup!.Status;

    private static ConditionAssessment Assessment(
        Machine machine,
        Measurand measurand,
        double target,
        IEnumerable<SensorReading> rows,
        IEnumerable<OilSample> samples,
        double hours
    )
    {
        var run = new TreatmentRun(Invented.Start, null, TreatmentKind.VacuumDehydration, measurand, target);
        var limits = new LimitSet(
            "test",
            [new Limit(measurand, LimitKind.Absolute, new LimitBand(400, 800), null, Source.CommonPractice("invented"))]
        );
        return ConditionAssessor.Assess(
            OilHistory.Create(machine, samples, rows, [run]),
            limits,
            new AssessmentOptions(Cleanup.Runs.At(hours))
        );
    }

    private static SensorReading Row(double hour, params (Measurand Measurand, double Value)[] values) =>
        new(Cleanup.Runs.At(hour), values.ToDictionary(pair => pair.Measurand, pair => new Reading(pair.Value)));

    private static OilSample Sample(int i, double hour, Measurand measurand, double value) =>
        new($"S{i}", Cleanup.Runs.At(hour), new Dictionary<Measurand, Reading> { [measurand] = new(value) });

    /// <summary>Sensor every half hour with a scatter of 1, titrations at drawn moments with a bias and 5 %.</summary>
    private static (List<(double Hour, double Ppm)> Sensor, List<(double Hour, double Ppm)> Titrations) Log(Drawn run)
    {
        var random = new Random(run.Seed);
        double Truth(double hour) => Cleanup.Runs.Exponential(hour, run.Start, run.Floor, run.Rate);
        var sensor = Enumerable
            .Range(0, 49)
            .Select(i => (i / 2.0, Math.Max(0, Truth(i / 2.0) + Cleanup.Runs.Normal(random))))
            .ToList();
        var titrations = Enumerable
            .Range(0, run.Titrations)
            .Select(i => 24.0 * (i + 0.5) / run.Titrations)
            .Select(hour => (hour, Math.Max(0, run.Bias * Truth(hour) * (1 + 0.05 * Cleanup.Runs.Normal(random)))))
            .ToList();
        return (sensor, titrations);
    }

    [Fact]
    public void The_assessment_of_water_says_what_a_monitor_says_that_is_fed_reading_by_reading() =>
        Runs.Holds(
            run =>
            {
                var (sensor, titrations) = Log(run);
                var saturation = Invented.Curve.SaturationAt(LiveRuns.Celsius(50)).Content.PartsPerMillion;
                double Percent(double ppm) => Math.Min(100, 100 * ppm / saturation);
                var monitor = new CleanupMonitor(
                    CleanupMonitorOptions.ReferredTo(
                        Invented.Start,
                        new TreatmentTarget(LiveRuns.Ppm(60)),
                        Invented.Curve,
                        TimeSpan.FromHours(4),
                        LiveRuns.Celsius(60),
                        TimeSpan.FromDays(7)
                    )
                );
                foreach (var (hour, ppm) in sensor)
                {
                    monitor.Take(
                        CleanupReading.Sensor(
                            Cleanup.Runs.At(hour),
                            Ratio.FromPercent(Percent(ppm)),
                            LiveRuns.Celsius(50)
                        )
                    );
                }

                foreach (var (hour, ppm) in titrations)
                {
                    monitor.Take(CleanupReading.Titration(Cleanup.Runs.At(hour), LiveRuns.Ppm(ppm)));
                }

                var assessed = Assessed(
                    Of(hasCurve: true),
                    Measurands.WaterContent,
                    60,
                    sensor.Select(one =>
                        Row(
                            one.Hour,
                            (Measurands.RelativeSaturation, Percent(one.Ppm)),
                            (Measurands.OilTemperature, 50)
                        )
                    ),
                    titrations.Select((one, i) => Sample(i, one.Hour, Measurands.WaterContent, one.Ppm)),
                    24
                );

                var fed = monitor.Status(assessed.Confidence);
                assessed.Phase.ShouldBe(fed.Phase);
                assessed.Arrival.ToString().ShouldBe(fed.Arrival.ToString());
                LiveRuns.Answers(assessed).ShouldBe(LiveRuns.Answers(fed));
            },
            iter: 60
        );

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_users_measurand_is_followed_as_well_and_without_a_saturation_curve(bool hasCurve) =>
        Runs.Holds(
            run =>
            {
                var (sensor, samples) = Log(run);
                var machine = Of(hasCurve);
                var started = new TreatmentRun(Invented.Start, null, TreatmentKind.VacuumDehydration, Varnish, 60);
                var monitor = new CleanupMonitor(CleanupMonitorOptions.Of(started, machine));
                foreach (var (hour, value) in sensor)
                {
                    monitor.Take(CleanupReading.BySensor(Cleanup.Runs.At(hour), new Reading(value)));
                }

                foreach (var (hour, value) in samples)
                {
                    monitor.Take(CleanupReading.OfSample(Cleanup.Runs.At(hour), new Reading(value)));
                }

                var assessed = Assessed(
                    machine,
                    Varnish,
                    60,
                    sensor.Select(one => Row(one.Hour, (Varnish, one.Ppm))),
                    samples.Select((one, i) => Sample(i, one.Hour, Varnish, one.Ppm)),
                    24
                );
                LiveRuns.Answers(assessed).ShouldBe(LiveRuns.Answers(monitor.Status(assessed.Confidence)));
                assessed.RulingPart.ShouldBe(Varnish);
            },
            iter: 25
        );

    /// <summary>0.6 to 0.1 mg KOH/g at 0.1 1/h by samples every two hours: 0.2 is passed after ln(0.5/0.1)/0.1 = 16.1 h.</summary>
    [Fact]
    public void A_run_against_acid_is_followed_by_its_samples()
    {
        var samples = Enumerable
            .Range(0, 7)
            .Select(i =>
                Sample(i, 2 * i, Measurands.AcidNumber, 0.1 + 0.5 * Math.Exp(-0.2 * i) + 0.001 * (i % 2 == 0 ? 1 : -1))
            );
        var status = Assessed(Of(false), Measurands.AcidNumber, 0.2, [], samples, 12);

        status.Phase.ShouldBe(CleanupPhase.Falling);
        status.FollowsSensor.ShouldBeFalse();
        (status.CurveArrival.Estimate() - Invented.Start).TotalHours.ShouldBe(16.1, 1);
        status.Arrival.Estimate().ShouldBeGreaterThan(status.CurveArrival.Estimate().AddHours(3.9));
    }

    /// <summary>90 mg/kg, half a unit above and below by turns, for 30 h: no fall, and the mean is said, not the floor of a curve that has none.</summary>
    [Fact]
    public void A_run_without_a_fall_says_at_what_it_stays()
    {
        var rows = Enumerable
            .Range(0, 61)
            .Select(i => Row(i / 2.0, (Measurands.WaterContent, i % 2 == 0 ? 90.5 : 89.5)));
        var assessment = Assessment(Of(true), Measurands.WaterContent, 60, rows, [], 30);

        assessment.Cleanup!.Status.IsStalled.ShouldBeTrue(
            assessment.Cleanup.ToString() + string.Join(";", assessment.Findings.Select(one => one.Code))
        );
        var finding = assessment.Findings.Single(one => one.Code == FindingCode.CleanupStalled);
        Sentences
            .English.Of(finding)
            .ShouldBe("Cleanup under way does not reach the target of 60 mg/kg: it shows no fall, at about 90 mg/kg.");
    }

    /// <summary>Without the saturation curve a sensor of relative saturation tells no content: the titrations alone are followed.</summary>
    [Fact]
    public void Without_a_saturation_curve_the_titrations_alone_tell_water()
    {
        var rows = Enumerable
            .Range(0, 49)
            .Select(i => Row(i / 2.0, (Measurands.RelativeSaturation, 40), (Measurands.OilTemperature, 50)));
        var samples = Enumerable
            .Range(0, 8)
            .Select(i =>
                Sample(i, 3 * i, Measurands.WaterContent, Cleanup.Runs.Exponential(3 * i, 300, 40, 0.15) + i % 2)
            );
        var status = Assessed(Of(false), Measurands.WaterContent, 60, rows, samples, 24);

        status.Curve.Count.ShouldBe(8);
        status.FollowsSensor.ShouldBeFalse();
        status.Contradiction.ShouldBeNull();
        status.Temperature!.Value.DegreesCelsius.ShouldBe(50);
    }

    /// <summary>A sample 'below 20' counts by its likelihood and holds a target of 60; 'below 80' says nothing about it.</summary>
    [Theory]
    [InlineData(20, true)]
    [InlineData(80, false)]
    public void Readings_below_a_limit_hold_a_target_that_lies_above_it(double limit, bool holds)
    {
        double[] ppm = [300, 180, 110, 75];
        var monitor = new CleanupMonitor(
            CleanupMonitorOptions.Of(
                new TreatmentRun(Invented.Start, null, TreatmentKind.VacuumDehydration, Measurands.WaterContent, 60),
                Of(false)
            )
        );
        for (var i = 0; i < ppm.Length; i++)
        {
            monitor.Take(CleanupReading.OfSample(Cleanup.Runs.At(4 * i), new Reading(ppm[i])));
        }

        monitor.Take(CleanupReading.OfSample(Cleanup.Runs.At(24), new Reading(limit, Qualifier.LessThan)));

        monitor.Status().IsHolding.ShouldBe(holds);
    }

    private static TreatmentRun Planned(double removal = 0.7) =>
        new(
            Invented.Start,
            null,
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            60,
            planned: new(
                VolumeFlow.FromLitersPerHour(600),
                Ratio.FromDecimalFractions(removal),
                MassFraction.FromPartsPerMillion(20)
            )
        );

    private static ConditionAssessment Titrated(TreatmentRun run, params (double Hour, double Ppm)[] samples) =>
        ConditionAssessor.Assess(
            OilHistory.Create(
                Of(hasCurve: true),
                samples.Select(
                    (one, i) =>
                        new OilSample(
                            $"S{i}",
                            Cleanup.Runs.At(one.Hour),
                            new Dictionary<Measurand, Reading>
                            {
                                [Measurands.WaterContent] = new(one.Ppm),
                                [Measurands.OilTemperature] = new(60),
                            }
                        )
                ),
                [],
                [run]
            ),
            new LimitSet("test", []),
            new AssessmentOptions(Cleanup.Runs.At(samples[^1].Hour))
        );

    /// <summary>
    /// 1000 L, 600 L/h and 0.7 a pass: 0.42 1/h of some 0.84 t (870 kg/m³ at 15 °C, 0.0007 1/K by hand). At 700 mg/kg the unit takes out 0.42 · 680 · 0.84 = 240 g/h, and as
    /// much comes in. Without the plan the same samples say nothing yet.
    /// </summary>
    [Fact]
    public void A_run_with_its_plan_in_the_records_is_called_with_what_comes_in()
    {
        (double Hour, double Ppm)[] samples = [(0, 700), (2, 705), (4, 695), (6, 700)];
        var unplanned = new TreatmentRun(
            Invented.Start,
            null,
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            60
        );

        Titrated(unplanned, samples).Findings.ShouldNotContain(one => one.Code == FindingCode.CleanupStalled);
        var assessment = Titrated(Planned(), samples);

        assessment.Cleanup!.Status.IsStalled.ShouldBeTrue(
            assessment.Cleanup.ToString() + string.Join(";", assessment.Findings.Select(one => one.Code))
        );
        var finding = assessment.Findings.Single(one => one.Code == FindingCode.CleanupStalled);
        finding.Severity.ShouldBe(Severity.Alert);
        var text = Sentences.English.Of(finding);
        text.ShouldContain("does not reach the target of 60 mg/kg: it falls by ");
        text.ShouldContain("if the unit takes out what was planned");
        finding.Evidence.Single(one => one.Name == "water that comes in").Value!.Value.ShouldBe(240, 12);
        finding.Evidence.Single(one => one.Name == "at least").Value!.Value.ShouldBeLessThan(225);
        Sentences.German.Of(finding).ShouldContain("wenn die Anlage so viel entzieht wie geplant");
        Sentences.English.In(Sentences.Units.UsCustomary).Of(finding).ShouldContain(" lb/h");
    }

    [Fact]
    public void A_plan_in_the_records_comes_back()
    {
        var history = OilHistory.Create(Of(hasCurve: true), [], [], [Planned()]);

        var read = OilHistory.Parse(history.ToJson()).Events.OfType<TreatmentRun>().Single();

        read.Planned.ShouldBe(Planned().Planned);
        read.Planned!.ToString().ShouldBe("600 L/h, 70 % removed per pass, floor 20 mg/kg, 0 g/h coming in");
    }

    /// <summary>A field that is missing, one out of its range and one that is not known: each is named, and the run is not taken without its plan.</summary>
    [Theory]
    [InlineData("\"removalPerPass\":0.7", "\"removalPerPass\":7", "planned: removalPerPass")]
    [InlineData("\"removalPerPass\":0.7,", "", "planned.removalPerPass: a number is expected")]
    [InlineData("\"removalPerPass\":0.7", "\"removalPerPass\":0.7,\"slip\":1", "slip")]
    public void A_plan_that_cannot_be_read_is_named(string text, string instead, string fault)
    {
        var json = OilHistory.Create(Of(hasCurve: true), [], [], [Planned()]).ToJson().Replace(" ", "");
        json.ShouldContain(text);

        Should.Throw<FormatException>(() => OilHistory.Parse(json.Replace(text, instead))).Message.ShouldContain(fault);
    }

    /// <summary>What the records take, an assessment bears: the least and the most of each figure, in oil as cold and as hot as a machine may be.</summary>
    [Theory]
    [InlineData(1e-6, 1e-9, 0, 0, -60)]
    [InlineData(1e9, 1, 500_000, 1e9, 200)]
    public void The_ends_of_a_plan_are_assessed(
        double litresPerHour,
        double removal,
        double floor,
        double gramsPerHour,
        double celsius
    )
    {
        var machine = new Machine(
            "M1",
            "invented machine",
            Invented.Oil,
            Volume.FromLiters(1000),
            Temperature.FromDegreesCelsius(celsius),
            Temperature.FromDegreesCelsius(-60)
        );
        var run = new TreatmentRun(
            Invented.Start,
            null,
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            60,
            planned: new(
                VolumeFlow.FromLitersPerHour(litresPerHour),
                Ratio.FromDecimalFractions(removal),
                MassFraction.FromPartsPerMillion(floor),
                MassFlow.FromGramsPerHour(gramsPerHour)
            )
        );

        var assessment = ConditionAssessor.Assess(
            OilHistory.Create(
                machine,
                Enumerable.Range(0, 8).Select(i => Sample(i, 4 * i, Measurands.WaterContent, 600 - 2 * i)),
                [],
                [run]
            ),
            new LimitSet("test", []),
            new AssessmentOptions(Cleanup.Runs.At(28))
        );

        assessment.Cleanup!.Status.Phase.ShouldBeOneOf(
            CleanupPhase.FreeWater,
            CleanupPhase.Falling,
            CleanupPhase.Stalled
        );
        assessment.ToJson().ShouldNotContain("NaN");
        assessment.ToJson().ShouldNotContain("Infinity");
    }

    [Fact]
    public void A_plan_is_of_water() =>
        Should
            .Throw<ArgumentException>(() =>
                new TreatmentRun(
                    Invented.Start,
                    null,
                    TreatmentKind.VacuumDehydration,
                    Varnish,
                    20,
                    planned: Planned().Planned
                )
            )
            .ParamName.ShouldBe("planned");

    [Theory]
    [InlineData(0, 0.5, 20, 0, "flow")]
    [InlineData(600, 1.2, 20, 0, "removalPerPass")]
    [InlineData(600, 0.5, 600_000, 0, "floorWithoutIngress")]
    [InlineData(600, 0.5, 20, -1, "waterIngress")]
    public void A_plan_beyond_its_ranges_is_refused(
        double litresPerHour,
        double removal,
        double floor,
        double gramsPerHour,
        string name
    ) =>
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                new TreatmentRun.PlannedUnit(
                    VolumeFlow.FromLitersPerHour(litresPerHour),
                    Ratio.FromDecimalFractions(removal),
                    MassFraction.FromPartsPerMillion(floor),
                    MassFlow.FromGramsPerHour(gramsPerHour)
                )
            )
            .ParamName.ShouldBe(name);
}
