using System.Globalization;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>Figures and dates in sentences and evidence, thresholds and orders of findings.</summary>
public class AssessmentFigureTests
{
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(400);

    private static LimitSet Limits(params (Measurand Measurand, double Alert, double Alarm)[] limits) =>
        new(
            "test",
            limits.Select(one => new Limit(
                one.Measurand,
                LimitKind.Absolute,
                new LimitBand(one.Alert, one.Alarm),
                null,
                Source.CommonPractice("invented")
            ))
        );

    private static List<OilSample> Samples(Measurand measurand, Func<int, double> value, int count = 13) =>
        [.. Enumerable.Range(0, count).Select(i => Invented.Sample(i, 30 * i, (measurand, new Reading(value(i)))))];

    private static ConditionAssessment Assess(OilHistory history, LimitSet limits, TimeSpan? horizon = null) =>
        ConditionAssessor.Assess(history, limits, new AssessmentOptions(Now, horizon));

    private static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateTimeOffset At(RemainingLifeFinding finding, double chance)
    {
        finding.Life.Crossing.TryAt(chance, out var at).ShouldBeTrue();
        return at;
    }

    [Fact]
    public void The_dates_of_a_sentence_are_those_of_its_chances_and_the_pace_is_per_30_days()
    {
        var history = Invented.History(Samples(Measurands.AcidNumber, i => 0.1 + 0.02 * i + 0.01 * (i % 2)));
        var finding = Assess(history, Limits((Measurands.AcidNumber, 0.3, 0.45)))
            .Findings.OfType<RemainingLifeFinding>()
            .Single();

        Sentences
            .English.Of(finding)
            .ShouldContain(
                $"rising towards the limit of 0.45 mgKOH/g, expected to reach it around {Day(At(finding, 0.5))}; one chance in ten before {Day(At(finding, 0.1))}, one in ten after {Day(At(finding, 0.9))}"
            );
        finding.Earliest.ShouldBe(At(finding, 0.1));
        finding.Evidence.Single(item => item.Name == "change per 30 days").Value!.Value.ShouldBe(0.02, 1e-4);
        Sentences
            .English.Of(Assess(history, Limits((Measurands.AcidNumber, 0.3, 0.45))).States.Single())
            .ShouldBe("rising, 0.02 mgKOH/g per 30 days (13 readings)");
    }

    [Fact]
    public void A_crossing_is_worth_planning_for_from_one_chance_in_ten_on()
    {
        var history = Invented.History(Samples(Measurands.AcidNumber, i => 0.1 + 0.02 * i + 0.004 * (i % 3)));
        var limits = Limits((Measurands.AcidNumber, 0.5, 0.8));
        var life = (RemainingLife.Forecast)Assess(history, limits).States[0].Lives.Single();
        bool IsFound(double chance)
        {
            life.Crossing.TryAt(chance, out var at).ShouldBeTrue();
            return Assess(history, limits, TimeSpan.FromDays((at - Now).TotalDays))
                .Findings.OfType<RemainingLifeFinding>()
                .Any();
        }

        IsFound(0.15).ShouldBeTrue();
        IsFound(0.08).ShouldBeFalse();
    }

    [Fact]
    public void Free_water_is_told_with_what_the_oil_holds()
    {
        var history = Invented.History(Samples(Measurands.WaterContent, _ => 250));
        var finding = Assess(history, Limits((Measurands.WaterContent, 300, 800))).Findings.Single();

        Sentences
            .English.Of(finding)
            .ShouldContain(
                "of 250 mg/kg the oil holds 100 mg/kg at 20 °C, so that about 150 mg/kg, 120 to 180, are free"
            );
    }

    /// <summary>
    /// Litres stand beside the temperature they belong to. Of 880 mg/kg 400 are dissolved at 60 °C and 100 at 20 °C: 480 and 780 are free, in 870 kg of oil 0.418 and
    /// 0.679 kg. Errors in quadrature: 10 % of 880 with 15 % of 400, 107 mg/kg.
    /// </summary>
    [Fact]
    public void Litres_of_free_water_stand_beside_their_temperature()
    {
        var history = Invented.History(Samples(Measurands.WaterContent, _ => 880));
        var finding = Assess(history, Limits((Measurands.WaterContent, 1000, 1800)))
            .Findings.Single(one => one.Code == FindingCode.FreeWaterRunning);

        var said = Sentences.English.Of(finding);
        said.Substring(said.IndexOf("about", StringComparison.Ordinal))
            .ShouldStartWith(
                "about 500 mg/kg, 400 to 600, are free (some 0.42 L at 60 °C, and 0.68 L at 20 °C after standstill)"
            );
        finding.Evidence.Single(one => one.Name == "free water, at most").Value!.Value.ShouldBe(587, 15);
    }

    [Theory]
    [InlineData(0.35, 900)]
    [InlineData(0.6, 320)]
    public void What_is_gravest_comes_first(double acid, double water)
    {
        var samples = Enumerable
            .Range(0, 6)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.AcidNumber, new Reading(acid)),
                    (Measurands.WaterContent, new Reading(water))
                )
            );
        var machine = new Machine(
            "M1",
            "no curve",
            new Oil("invented", Invented.Oil.NewReadings),
            Invented.Machine.ChargeVolume,
            Invented.Machine.RunningTemperature,
            Invented.Machine.StandstillTemperature
        );
        var limits = Limits((Measurands.AcidNumber, 0.3, 0.5), (Measurands.WaterContent, 300, 800));
        var assessment = Assess(OilHistory.Create(machine, samples, [], []), limits);

        assessment.Worst.ShouldBe(Severity.Alarm);
        assessment.Findings.Select(finding => finding.Severity).ShouldBeInOrder(SortDirection.Descending);
        assessment.Findings.Select(finding => finding.Severity).Distinct().Count().ShouldBe(2);
        assessment.Recommendations.Select(one => one.Severity).ShouldBeInOrder(SortDirection.Descending);
        assessment.Recommendations.Select(one => one.Severity).Distinct().Count().ShouldBe(2);
    }

    [Fact]
    public void A_sensor_reading_older_than_the_latest_sample_is_not_the_latest()
    {
        var sensor = new SensorReading(
            Invented.Start.AddDays(350),
            new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(900) }
        );
        var history = OilHistory.Create(Invented.Machine, Samples(Measurands.WaterContent, _ => 50), [sensor], []);
        var state = Assess(history, Limits((Measurands.WaterContent, 300, 800))).States.Single();

        state.Latest!.SampleNumber.ShouldBe("S12");
        state.Worst.State.ShouldBe(LimitState.Normal);
    }

    [Fact]
    public void Faults_of_an_earlier_charge_are_no_findings_and_an_old_suspect_bottle_opens_no_work_request()
    {
        var samples = Samples(Measurands.Iron, i => i == 2 ? -5 : 5);
        var limits = Limits((Measurands.Iron, 50, 100));

        Assess(Invented.History(samples), limits).Findings.Single().Code.ShouldBe(FindingCode.RecordFault);
        Assess(Invented.History(samples, new OilChange(Invented.Start.AddDays(200))), limits).Findings.ShouldBeEmpty();

        var swapped = Enumerable
            .Range(0, 13)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.Viscosity40, new Reading(i == 6 ? 321 : 46)),
                    (Measurands.Zinc, new Reading(i == 6 ? 15 : 400))
                )
            );
        var assessment = Assess(Invented.History(swapped), limits);
        assessment.Findings.Single().Severity.ShouldBe(Severity.Information);
        assessment.Alerts.ShouldBeEmpty();
    }

    [Fact]
    public void A_latest_sample_that_contradicts_itself_asks_for_another_one()
    {
        List<OilSample> samples =
        [
            .. Samples(Measurands.Iron, _ => 5),
            Invented.Sample(12, 360, (Measurands.Iron, new Reading(80))),
        ];
        var assessment = Assess(Invented.History(samples), Limits((Measurands.Iron, 50, 100)));

        assessment.Alerts.Single().Key.ShouldBe("M1/undated/records/S12");
        assessment.Recommendations.Single().Action.ShouldBe(RecommendedAction.SampleAgain);
        Sentences
            .English.Of(assessment.Findings[0])
            .ShouldBe(
                "Sample S12 of 2026-01-01 contradicts another record of the same number; set aside: iron 5 mg/kg."
            );
    }

    [Theory]
    [InlineData(399, FindingCode.FreeWaterAtStandstill, Severity.Alert)] // the oil holds 400 mg/kg at the running temperature
    [InlineData(401, FindingCode.FreeWaterRunning, Severity.Alarm)]
    public void Free_water_while_running_is_an_alarm(double water, FindingCode code, Severity severity)
    {
        var finding = Assess(
            Invented.History(Samples(Measurands.WaterContent, _ => water)),
            Limits((Measurands.WaterContent, 500, 800))
        )
            .Findings.Single();

        finding.Code.ShouldBe(code);
        finding.Severity.ShouldBe(severity);
    }

    [Fact]
    public void An_alert_is_as_severe_as_its_gravest_finding()
    {
        var samples = Enumerable
            .Range(0, 6)
            .Select(i =>
                Invented.Sample(
                    i,
                    60 * i,
                    (Measurands.Particles4, new Reading(3000)),
                    (Measurands.Particles6, new Reading(2600))
                )
            );
        var alert = Assess(
            Invented.History(samples),
            Limits((Measurands.Particles4, 2500, 10_000), (Measurands.Particles6, 640, 2500))
        )
            .Alerts.Single();

        alert.Findings.Select(finding => finding.Severity).ShouldBe([Severity.Alarm, Severity.Alert]);
        alert.Severity.ShouldBe(Severity.Alarm);
    }

    [Theory]
    [InlineData(99.4, Qualifier.Approximately)]
    [InlineData(99.5, Qualifier.GreaterThan)]
    public void A_saturated_sensor_says_at_least(double percent, Qualifier expected)
    {
        var sensor = new SensorReading(
            Invented.Start.AddDays(390),
            new Dictionary<Measurand, Reading>
            {
                [Measurands.RelativeSaturation] = new(percent),
                [Measurands.OilTemperature] = new(60),
            }
        );
        var history = OilHistory.Create(Invented.Machine, [], [sensor], []);

        var reading = Assess(history, Limits((Measurands.WaterContent, 500, 800))).States.Single().Latest!.Reading;
        reading.Qualifier.ShouldBe(expected);
        reading.Value.ShouldBe(4 * percent, 1e-6); // of 400 mg/kg at 60 °C
    }

    [Fact]
    public void A_cleanup_that_levels_off_above_its_target_is_an_alert()
    {
        // Truth: 90 + 300 exp(-0.15 t) mg/kg over 60 h, which ends above the target of 60.
        var started = Now.AddHours(-60);
        var rows = Enumerable
            .Range(0, 121)
            .Select(i => new SensorReading(
                started.AddHours(i / 2.0),
                new Dictionary<Measurand, Reading>
                {
                    [Measurands.WaterContent] = new(Math.Round(90 + 300 * Math.Exp(-0.075 * i))),
                }
            ));
        var run = new TreatmentRun(started, null, TreatmentKind.VacuumDehydration, Measurands.WaterContent, 60);
        var history = OilHistory.Create(Invented.Machine, [], rows, [run]);
        var assessment = Assess(history, Limits((Measurands.WaterContent, 500, 800)));

        var alert = assessment.Alerts.Single(one => one.Findings[0] is CleanupFinding);
        alert.Key.ShouldBe("M1/undated/cleanup");
        alert.Severity.ShouldBe(Severity.Alert);
    }

    [Fact]
    public void A_number_used_twice_without_readings_has_nothing_to_set_aside()
    {
        List<OilSample> samples = [.. Samples(Measurands.Iron, _ => 5), Invented.Sample(3, 200)];
        var assessment = Assess(Invented.History(samples), Limits((Measurands.Iron, 50, 100)));

        Sentences
            .English.Of(assessment.Findings.Single())
            .ShouldBe(
                "Sample S3 of 2025-07-25 contradicts another record of the same number; it has no readings to set aside."
            );
    }
}
