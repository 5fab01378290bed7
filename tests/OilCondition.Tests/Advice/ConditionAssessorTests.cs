using System.Text.Json;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;

namespace OilCondition.Tests.Advice;

public class ConditionAssessorTests
{
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(400);

    private static readonly LimitSet Limits = new(
        "test",
        [
            new Limit(
                Measurands.WaterContent,
                LimitKind.Absolute,
                new LimitBand(300, 800),
                null,
                Source.CommonPractice("invented")
            ),
            new Limit(
                Measurands.AcidNumber,
                LimitKind.ChangeFromNew,
                new LimitBand(0.2, 0.3),
                null,
                Source.CommonPractice("invented")
            ),
            new Limit(
                Measurands.Particles4,
                LimitKind.Absolute,
                new LimitBand(2500, 10_000),
                null,
                Source.CommonPractice("invented")
            ),
            new Limit(
                Measurands.Particles6,
                LimitKind.Absolute,
                new LimitBand(640, 2500),
                null,
                Source.CommonPractice("invented")
            ),
        ]
    );

    private static ConditionAssessment Assess(OilHistory history) =>
        ConditionAssessor.Assess(history, Limits, new AssessmentOptions(Now));

    private static List<OilSample> Samples(
        Func<int, double> water,
        Func<int, double> acid,
        double four = 1000,
        double six = 300
    ) =>
        [
            .. Enumerable
                .Range(0, 13)
                .Select(i =>
                    Invented.Sample(
                        i,
                        30 * i,
                        (Measurands.WaterContent, new Reading(water(i))),
                        (Measurands.AcidNumber, new Reading(acid(i))),
                        (Measurands.Particles4, new Reading(four)),
                        (Measurands.Particles6, new Reading(six)),
                        (Measurands.Particles14, new Reading(30))
                    )
                ),
        ];

    [Fact]
    public void A_healthy_oil_raises_nothing()
    {
        var assessment = Assess(Invented.History(Samples(i => 50 + i % 3, i => 0.12 + 0.01 * (i % 2))));

        assessment.Findings.ShouldBeEmpty();
        assessment.Recommendations.ShouldBeEmpty();
        assessment.Worst.ShouldBe(Severity.Information);
        assessment.Cleanliness!.ToString().ShouldBe("17/15/12"); // 1000, 300, 30 per mL in ISO 4406 table 1, by eye
    }

    [Fact]
    public void Water_that_is_dissolved_when_hot_and_free_when_cold_is_found_though_its_limit_is_kept()
    {
        // The curve holds 400 mg/kg at 60 °C and 100 at 20 °C: of 250, 150 come out; 1000 L of 870 kg/m³ hold 0.1305 kg of it.
        var assessment = Assess(Invented.History(Samples(_ => 250, _ => 0.12)));

        var finding = assessment.Findings.Single().ShouldBeOfType<FreeWaterFinding>();
        finding.Code.ShouldBe(FindingCode.FreeWaterAtStandstill);
        finding.Balance.Running.HasFreeWater.ShouldBeFalse();
        finding.Balance.Standstill.Free.PartsPerMillion.ShouldBe(150, 1e-6);
        finding.Balance.FreeAtStandstill!.Value.Liters.ShouldBe(0.1305, 1e-6);
        assessment.Alerts.Single().Key.ShouldBe("M1/undated/water");
        assessment.Recommendations.Select(one => one.Action).ShouldContain(RecommendedAction.DrainFreeWater);
    }

    /// <summary>What a plan warns of, an assessment warns of: they are read from one list.</summary>
    [Fact]
    public void A_recommended_treatment_has_the_cautions_of_its_plan()
    {
        var wet = Assess(Invented.History(Samples(_ => 900, _ => 0.12)));
        var dirty = Assess(Invented.History(Samples(_ => 50, _ => 0.12, four: 5000, six: 1500)));

        Of(wet, RecommendedAction.VacuumDehydrate).ShouldBe(CautionsOf.Treatment(TreatmentKind.VacuumDehydration));
        Of(wet, RecommendedAction.VacuumDehydrate).ShouldContain(Caution.SpillsAndWaste);
        Of(dirty, RecommendedAction.FilterInKidneyLoop).ShouldBe(CautionsOf.Treatment(TreatmentKind.FineFiltration));
        Of(dirty, RecommendedAction.FilterInKidneyLoop).ShouldContain(Caution.ElectricalIsolation);

        static IReadOnlyList<Caution> Of(ConditionAssessment assessment, RecommendedAction action) =>
            assessment.Recommendations.Single(one => one.Action == action).Cautions;
    }

    [Fact]
    public void Ageing_asks_for_an_oil_change_before_the_limit()
    {
        var assessment = Assess(Invented.History(Samples(_ => 50, i => 0.1 + 0.018 * i + 0.002 * (i % 2))));

        var finding = assessment.Findings.OfType<RemainingLifeFinding>().Single();
        finding.Life.Limit.ShouldBe(0.4, 1e-12); // 0.1 as new and 0.3 allowed
        var change = assessment.Recommendations.Single(one => one.Action == RecommendedAction.PlanOilChange);
        change.Quantities.ShouldContain(item => item.Name == "no later than");
        change.Cautions.ShouldContain(Caution.HotOil);
    }

    [Fact]
    public void Particles_of_two_sizes_make_one_alert()
    {
        var assessment = Assess(Invented.History(Samples(_ => 50, _ => 0.12, four: 5000, six: 1500)));

        assessment.Findings.Count.ShouldBe(2);
        var alert = assessment.Alerts.Single();
        alert.Key.ShouldBe("M1/undated/dirt");
        alert.Findings.Count.ShouldBe(2);
    }

    [Fact]
    public void A_key_is_the_same_whatever_the_order_and_repetition_and_new_after_an_oil_change()
    {
        var samples = Samples(_ => 500, _ => 0.12);
        var keys = Assess(Invented.History(samples)).Alerts.Select(alert => alert.Key).ToList();
        var shuffled = Assess(Invented.History(samples.AsEnumerable().Reverse().Concat(samples.Take(4))));
        var changed = Assess(Invented.History(samples, new OilChange(Invented.Start.AddDays(200))));

        keys.ShouldNotBeEmpty();
        shuffled.Alerts.Select(alert => alert.Key).ShouldBe(keys);
        changed.Alerts.Select(alert => alert.Key).ShouldBe(keys.Select(key => key.Replace("undated", "2025-07-25")));
    }

    [Fact]
    public void What_comes_after_now_is_not_looked_at()
    {
        var samples = Samples(_ => 50, _ => 0.12);
        samples.Add(Invented.Sample(99, 401, (Measurands.WaterContent, new Reading(5000))));

        var later = new SensorReading(
            Now.AddMinutes(1),
            new Dictionary<Measurand, Reading>
            {
                [Measurands.RelativeSaturation] = new(100),
                [Measurands.OilTemperature] = new(60),
            }
        );

        // But it is told: a laboratory's clock may be ahead, and nobody is to wonder where the sample has gone.
        var assessment = Assess(OilHistory.Create(Invented.Machine, samples, [later], []));
        var finding = assessment.Findings.ShouldHaveSingleItem();
        (finding.Code, finding.Severity).ShouldBe((FindingCode.RecordFault, Severity.Information));
        Sentences
            .English.Of(finding)
            .ShouldBe("Sample S99 is dated 2026-02-11 08:00, later than this assessment, and not judged yet.");
        assessment.Alerts.ShouldBeEmpty();
    }

    [Fact]
    public void A_cleanup_under_way_is_fitted_from_the_sensor_and_replaces_the_forecast()
    {
        // Truth: saturated until hour 6, then 40 + 320 exp(−0.15 t) mg/kg; target 80 after ln(320/40)/0.15 = 13.86 h more.
        var started = Invented.Start.AddDays(399.25);
        var rows = Enumerable
            .Range(0, 4 * 18 + 1)
            .Select(i =>
            {
                var hours = i / 4.0;
                var water = hours < 6 ? 2000 : 40 + 320 * Math.Exp(-0.15 * (hours - 6));
                return new SensorReading(
                    started.AddHours(hours),
                    new Dictionary<Measurand, Reading>
                    {
                        [Measurands.RelativeSaturation] = new(Math.Min(100, Math.Round(100 * water / 400, 1))),
                        [Measurands.OilTemperature] = new(60),
                    }
                );
            });
        var run = new TreatmentRun(started, null, TreatmentKind.VacuumDehydration, Measurands.WaterContent, 80);
        var history = OilHistory.Create(Invented.Machine, Samples(_ => 900, _ => 0.12), rows, [run]);
        var assessment = Assess(history);

        assessment.Cleanup!.Status.Curve.RatePerHour.ShouldBe(0.15, 0.003);
        assessment.Cleanup.Status.Curve.Floor.ShouldBe(40, 5);
        var passed = assessment.Cleanup.Status.CurveArrival.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();
        (passed.Estimate - started).TotalHours.ShouldBe(19.86, 0.3);

        // It counts when it has held for four hours, by readings that come every quarter of an hour.
        var expected = assessment.Cleanup.Status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();
        (expected.Estimate - started).TotalHours.ShouldBe(19.86 + 4.125, 0.5);
        expected.Earliest.ShouldBeLessThan(expected.Estimate);
        assessment.States[0].Lives.ShouldBeEmpty();
        assessment.States[0].Latest!.Reading.Qualifier.ShouldBe(Qualifier.Approximately);
        assessment.Findings.ShouldContain(finding => finding.Code == FindingCode.CleanupUnderWay);
        assessment.Recommendations.ShouldNotContain(one => one.Action == RecommendedAction.VacuumDehydrate);
        using var json = JsonDocument.Parse(assessment.ToJson());
        var cleanup = json.RootElement.GetProperty("cleanup");
        cleanup.GetProperty("outcome").GetString().ShouldBe("expected");
        cleanup.GetProperty("expected").GetDateTimeOffset().ShouldBe(expected.Estimate, TimeSpan.FromSeconds(1));
        cleanup.GetProperty("ratePerHour").GetDouble().ShouldBe(0.15, 0.003);
    }

    [Fact]
    public void Water_that_returns_after_a_cleanup_is_a_trend_since_the_cleanup()
    {
        var end = Invented.Start.AddDays(175);
        var run = new TreatmentRun(end.AddDays(-2), end, TreatmentKind.VacuumDehydration, Measurands.WaterContent, 60);
        var samples = Samples(i => i < 6 ? 900 : 40 + 70 * (i - 6) + 3 * (i % 2), _ => 0.12);
        var assessment = Assess(Invented.History(samples, run));

        var finding = assessment.Findings.OfType<RemainingLifeFinding>().Single();
        finding.FollowsTreatment.ShouldBeTrue();
        finding.Life.Series.Origin.ShouldBe(end);
        assessment.Recommendations.Select(one => one.Action).ShouldContain(RecommendedAction.FindWaterIngress);
        Sentences.English.Of(finding).ShouldContain("since the treatment");
    }

    [Fact]
    public void An_oil_without_a_curve_is_told_so_instead_of_being_given_one()
    {
        var machine = new Machine(
            "M2",
            "no curve",
            new Oil("unknown", Invented.Oil.NewReadings),
            Invented.Machine.ChargeVolume,
            Invented.Machine.RunningTemperature,
            Invented.Machine.StandstillTemperature
        );
        var history = OilHistory.Create(machine, Samples(_ => 250, _ => 0.12), [], []);

        Assess(history).Water.ShouldBeOfType<WaterInOil.NoSaturationCurve>();
    }

    [Fact]
    public void A_machine_that_was_never_sampled_is_a_result_and_asks_for_a_sample()
    {
        var never = Assess(Invented.History([]));

        var finding = never.Findings.Single();
        (finding.Code, finding.Severity).ShouldBe((FindingCode.NeverSampled, Severity.Alert));
        finding
            .ToString()
            .ShouldBe("No sample and no sensor reading of this oil is on record; nobody knows its condition.");
        never.Alerts.Single().Key.ShouldBe("M1/undated/sampling");
        never.Recommendations.Single().Action.ShouldBe(RecommendedAction.SampleAgain);
        never.NextSample!.At.ShouldBe(Now);
        never.ToJson().ShouldContain("never-sampled");
        never.First.ShouldNotBeNull();
    }

    [Theory]
    [InlineData(179, Severity.Information)]
    [InlineData(181, Severity.Alert)]
    public void New_oil_has_the_longest_interval_for_its_first_sample(double days, Severity severity)
    {
        var assessment = Assess(Invented.History([], new OilChange(Now.AddDays(-days))));

        assessment.Findings.Single().Severity.ShouldBe(severity);
        assessment.NextSample!.At.ShouldBe(Now.AddDays(14 - days));
        assessment.NextSample.Reason.ShouldBe(NextSampleReason.NeverSampled);
    }

    [Fact]
    public void A_sample_of_the_future_is_told_and_not_judged()
    {
        var samples = Samples(_ => 50, _ => 0.12);
        samples.Add(Invented.Sample(98, 400 + 3650, (Measurands.WaterContent, new Reading(5000))));
        samples.Add(Invented.Sample(99, 400 + 3651, (Measurands.WaterContent, new Reading(5000))));
        var assessment = Assess(
            OilHistory.Create(
                Invented.Machine,
                samples,
                [
                    new SensorReading(
                        Now.AddDays(40),
                        new Dictionary<Measurand, Reading> { [Measurands.RelativeSaturation] = new(100) }
                    ),
                ],
                []
            )
        );

        assessment
            .Alerts.Select(alert => alert.Key)
            .ShouldBe(
                ["M1/undated/records/S98", "M1/undated/records/S99", "M1/undated/records/sensor"],
                ignoreOrder: true
            );
        assessment
            .Problems[0]
            .Findings[0]
            .ToString()
            .ShouldBe(
                "Sample S98 is dated 2036-02-08, later than this assessment; it is not judged until its date is put right."
            );
        assessment.History.Issues.Count(issue => issue.Kind == HistoryIssueKind.DatedLater).ShouldBe(3);
        assessment.States.ShouldAllBe(state => state.Latest == null || state.Latest.At <= Now);
        // To look back, the history is asked for what was known then.
        ConditionAssessor
            .Assess(Invented.History(samples).Until(Now), Limits, new AssessmentOptions(Now))
            .Alerts.ShouldBeEmpty();
    }

    [Fact]
    public void Json_carries_the_facts_and_is_the_same_bytes_each_time()
    {
        var history = Invented.History(Samples(i => 500 + i, i => 0.1 + 0.018 * i));
        var json = Assess(history).ToJson();

        Assess(history).ToJson().ShouldBe(json);
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        root.GetProperty("machine").GetString().ShouldBe("M1");
        root.GetProperty("alerts")
            .EnumerateArray()
            .Select(one => one.GetProperty("key").GetString())
            .ShouldContain("M1/undated/water");
        root.GetProperty("water").GetProperty("standstill").GetProperty("freeMgPerKg").GetDouble().ShouldBe(412, 1e-3);
        var water = root.GetProperty("states")[0];
        water.GetProperty("latest").GetProperty("value").GetDouble().ShouldBe(512);
        water.GetProperty("latest").GetProperty("qualifier").GetString().ShouldBe("none");
        water.GetProperty("limits")[0].GetProperty("upper").GetProperty("alarm").GetDouble().ShouldBe(800);
        root.TryGetProperty("cleanup", out _).ShouldBeFalse();
        var problem = root.GetProperty("problems")[0];
        problem.GetProperty("topic").GetString().ShouldBe("water");
        problem.GetProperty("statement").GetString()!.ShouldStartWith("Water: water content 512 mg/kg");
        problem.GetProperty("findings")[0].GetProperty("evidence").GetArrayLength().ShouldBeGreaterThan(3);
        root.GetProperty("alerts")[0].GetProperty("subject").GetString().ShouldBe("water");
        root.GetProperty("recommendations")[0].GetProperty("subjects")[0].GetString().ShouldBe("water");
        json.ShouldNotContain("NaN", Case.Sensitive);
    }

    [Fact]
    public void Every_word_has_its_sentence()
    {
        foreach (var caution in Enum.GetValues<Caution>())
        {
            Sentences.English.Of(caution).ShouldEndWith(".");
        }

        Enum.GetValues<Caution>().Select(Sentences.English.Of).ShouldBeUnique();
    }

    [Fact]
    public void A_planning_horizon_beyond_a_century_is_refused_with_the_range() =>
        Should
            .Throw<ArgumentOutOfRangeException>(() => new AssessmentOptions(Now, TimeSpan.FromDays(1e6)))
            .Message.ShouldContain("planningHorizon is 1000000 days; allowed: 0 to 36525 days");

    [Fact]
    public void A_swapped_latest_sample_asks_for_another_one()
    {
        var samples = Enumerable
            .Range(0, 10)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.Viscosity40, new Reading(i == 9 ? 321 : 46 + 0.1 * (i % 3))),
                    (Measurands.Zinc, new Reading(i == 9 ? 15 : 410 + 4 * (i % 4)))
                )
            );
        var assessment = Assess(Invented.History(samples));

        assessment.Findings.Single().Code.ShouldBe(FindingCode.SuspectSample);
        assessment.Recommendations.Single().Action.ShouldBe(RecommendedAction.SampleAgain);
        assessment.Alerts.Single().Key.ShouldBe("M1/undated/records/S9");
    }

    [Fact]
    public void The_life_to_a_limit_ends_where_it_is_already_passed() =>
        Assess(Invented.History(Samples(i => 700 + 20 * i, _ => 0.12)))
            .States[0]
            .Lives.Single()
            .ShouldBeOfType<RemainingLife.AlreadyCrossed>();
}
