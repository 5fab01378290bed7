using CsCheck;
using OilCondition.Limits;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>Findings of one topic are one problem with one statement, one alert and one set of recommendations. Expected words are written by hand.</summary>
public class ProblemTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private static readonly Machine WithoutCurve = new(
        "M1",
        "invented machine",
        new Oil("invented oil", new Dictionary<Measurand, Reading>()),
        Volume.FromLiters(1000),
        Temperature.FromDegreesCelsius(60),
        Temperature.FromDegreesCelsius(20)
    );

    private static Limit Above(Measurand measurand, double? alert, double? alarm, int confirmations = 1) =>
        new(measurand, LimitKind.Absolute, new LimitBand(alert, alarm), null, AnySource, confirmations: confirmations);

    private static Limit Below(Measurand measurand, double? alert, double? alarm) =>
        new(measurand, LimitKind.Absolute, null, new LimitBand(alert, alarm), AnySource);

    private static ConditionAssessment Assess(OilHistory history, double day, params Limit[] limits) =>
        ConditionAssessor.Assess(
            history.Until(Invented.Start.AddDays(day)),
            new LimitSet("test", limits),
            new AssessmentOptions(Invented.Start.AddDays(day))
        );

    private static ConditionAssessment One((Measurand Measurand, double Value)[] readings, params Limit[] limits) =>
        Assess(
            OilHistory.Create(
                WithoutCurve,
                [Invented.Sample(1, 10, [.. readings.Select(one => (one.Measurand, new Reading(one.Value)))])],
                [],
                []
            ),
            20,
            limits
        );

    private static Limit[] Sizes =>
        [
            Above(Measurands.Particles4, 640, 2500),
            Above(Measurands.Particles6, 160, 640),
            Above(Measurands.Particles14, 20, 80),
        ];

    private static (Measurand, double)[] Counts(double at4, double at6, double at14) =>
        [(Measurands.Particles4, at4), (Measurands.Particles6, at6), (Measurands.Particles14, at14)];

    [Fact]
    public void Three_sizes_beyond_alert_are_one_code_against_another()
    {
        var problem = One(Counts(1900, 600, 70), Sizes).Problems.ShouldHaveSingleItem();

        // ISO 4406: up to 2500, 640 and 80 per mL are 18, 16 and 13; 640, 160 and 20 per mL are the ends of 16, 14 and 11.
        problem.Statement.ShouldBe(
            "Dirt: ISO 4406 code 18/16/13 on 2025-01-16, above the alert limits 16/14/11 at all three sizes."
        );
        problem.Findings.Count.ShouldBe(3);
        problem.Evidence.Count.ShouldBe(3);
    }

    [Fact]
    public void Three_sizes_of_different_severity_are_one_problem_led_by_the_gravest()
    {
        var assessment = One(Counts(1900, 700, 70), Sizes);
        var problem = assessment.Problems.ShouldHaveSingleItem();

        problem.Statement.ShouldBe(
            "Dirt: particles ≥ 6 µm(c) 700 per mL (ISO 4406: 17) on 2025-01-16, above the alarm limit of 640 per mL (ISO 4406: 16); "
                + "also particles ≥ 4 µm(c) 1900 per mL (ISO 4406: 18; alert limit 640), particles ≥ 14 µm(c) 70 per mL (ISO 4406: 13; alert limit 20)."
        );
        (problem.Severity, problem.Topic).ShouldBe((Severity.Alarm, ProblemTopic.Dirt));
        assessment.Alerts.Single().Key.ShouldBe("M1/undated/dirt");
        assessment
            .Recommendations.Select(one => (one.Action, one.Problems.Single()))
            .ShouldBe([(RecommendedAction.FilterInKidneyLoop, problem), (RecommendedAction.FindDirtIngress, problem)]);
    }

    /// <summary>600 per mL and a limit of 400 per mL are both scale number 16: a code would say that nothing is beyond.</summary>
    [Fact]
    public void A_limit_within_a_scale_number_is_not_told_as_a_code()
    {
        Limit[] limits = [Sizes[0], Above(Measurands.Particles6, 400, 640), Sizes[2]];

        One(Counts(1900, 600, 70), limits)
            .Problems.Single()
            .Statement.ShouldBe(
                "Dirt: particles ≥ 4 µm(c) 1900 per mL (ISO 4406: 18) on 2025-01-16, above the alert limit of 640 per mL (ISO 4406: 16); "
                    + "also particles ≥ 6 µm(c) 600 per mL (ISO 4406: 16; alert limit 400), particles ≥ 14 µm(c) 70 per mL (ISO 4406: 13; alert limit 20)."
            );
    }

    /// <summary>A rate that is in alarm must not hide behind the code that is only in alert.</summary>
    [Fact]
    public void The_code_stands_only_where_it_says_all()
    {
        var rate = new Limit(
            Measurands.Particles6,
            LimitKind.RateOfChange,
            new LimitBand(null, 10),
            null,
            AnySource,
            per: TimeSpan.FromDays(30)
        );
        var history = OilHistory.Create(
            WithoutCurve,
            [.. Enumerable.Range(0, 4).Select(i => Sample(i, 1900, 300 + 100 * i, 70))],
            [],
            []
        );
        var problem = Assess(history, 95, [.. Sizes, rate]).Problems.Single();

        problem.Severity.ShouldBe(Severity.Alarm);
        problem.Statement.ShouldStartWith("Dirt: particles ≥ 6 µm(c) 600 per mL");
        problem.Statement.ShouldContain("per 30 days, where the alarm limit is 10");
        problem.Statement.ShouldNotContain("ISO 4406 code");

        static OilSample Sample(int i, double at4, double at6, double at14) =>
            Invented.Sample(
                i,
                30 * i,
                (Measurands.Particles4, new Reading(at4)),
                (Measurands.Particles6, new Reading(at6)),
                (Measurands.Particles14, new Reading(at14))
            );
    }

    private static readonly Limit[] Thickness =
    [
        new(
            Measurands.Viscosity40,
            LimitKind.PercentChangeFromNew,
            new LimitBand(5, 10),
            new LimitBand(-5, -10),
            AnySource
        ),
    ];

    [Fact]
    public void Too_thick_and_then_too_thin_are_two_problems()
    {
        ConditionAssessment On(int day) =>
            Assess(
                Invented.History([
                    Invented.Sample(1, 10, (Measurands.Viscosity40, new Reading(49))),
                    Invented.Sample(2, 40, (Measurands.Viscosity40, new Reading(43))),
                ]),
                day,
                Thickness
            );

        var (thick, thin) = (On(20), On(50));

        thick.Problems.Single().Side.ShouldBe(LimitSide.Upper);
        thin.Problems.Single().Side.ShouldBe(LimitSide.Lower);
        AlertJournal
            .Empty.Reconcile(thick)
            .Reconcile(thin)
            .Pending.Where(change => change.At == thin.Options.AsOf)
            .Select(change => $"{change.Kind} {change.Key}")
            .ShouldBe(
                ["Raised M1/undated/oil-identity/lower", "Cleared M1/undated/oil-identity/upper"],
                ignoreOrder: true
            );
        thin.Problems.Single()
            .Statement.ShouldBe(
                "Oil identity: viscosity at 40 °C 43 mm²/s on 2025-02-15, below the alert limit of 43.7 mm²/s."
            );
    }

    [Fact]
    public void Too_thin_with_a_low_flash_point_is_one_problem_and_too_thick_with_one_is_two()
    {
        var limits = (Limit[])
            [
                new Limit(
                    Measurands.Viscosity40,
                    LimitKind.Absolute,
                    new LimitBand(50, null),
                    new LimitBand(42, null),
                    AnySource
                ),
                Below(Measurands.FlashPoint, 150, null),
            ];
        string Keys(double viscosity) =>
            string.Join(
                " ",
                One([(Measurands.Viscosity40, viscosity), (Measurands.FlashPoint, 120)], limits)
                    .Problems.Select(one => one.Subject)
            );

        Keys(40).ShouldBe("oil-identity/lower");
        Keys(52).ShouldBe("oil-identity/lower oil-identity/upper");
    }

    [Fact]
    public void A_topic_with_information_only_is_a_problem_and_no_alert()
    {
        var assessment = One([(Measurands.Iron, 50)], Above(Measurands.Iron, 20, 40, confirmations: 2));

        var problem = assessment.Problems.ShouldHaveSingleItem();
        (problem.Severity, problem.Topic).ShouldBe((Severity.Information, ProblemTopic.Wear));
        problem.Statement.ShouldBe(
            "Wear: iron 50 mg/kg on 2025-01-16, above the alarm limit of 40 mg/kg, not yet confirmed by a second sample."
        );
        assessment.Alerts.ShouldBeEmpty();
        assessment.Recommendations.Single().Problems.ShouldBe([problem]);
    }

    private static ConditionAssessment ComingBack() =>
        Assess(
            Invented.History(
                [
                    Invented.Sample(99, 20, (Measurands.WaterContent, new Reading(250))),
                    .. Enumerable
                        .Range(0, 10)
                        .Select(i =>
                            Invented.Sample(i, 40 + 30 * i, (Measurands.WaterContent, new Reading(60 + 42 * i + i % 2)))
                        ),
                ],
                new TreatmentRun(
                    Invented.Start.AddDays(30),
                    Invented.Start.AddDays(31),
                    TreatmentKind.VacuumDehydration,
                    Measurands.WaterContent,
                    50
                )
            ),
            315,
            Above(Measurands.WaterContent, 200, 500)
        );

    /// <summary>60 mg/kg and 42 more each month; the oil holds 400 mg/kg at 60 °C, so that of 439 mg/kg some 39 are free while it runs.</summary>
    [Fact]
    public void Water_beyond_its_limit_free_coming_back_and_near_the_next_limit_is_one_statement()
    {
        var assessment = ComingBack();

        assessment
            .Findings.Select(one => one.Code)
            .ShouldBe([
                FindingCode.FreeWaterRunning,
                FindingCode.LimitPassed,
                FindingCode.RemainingLifeShort,
                FindingCode.CleanupRebounding,
            ]);
        var statement = assessment.Problems.ShouldHaveSingleItem().Statement;
        statement.ShouldStartWith(
            "Water: water content 439 mg/kg on 2025-11-12, above the alert limit of 200 mg/kg (beyond since 2025-06-15), about 40 mg/kg ("
        );
        statement.ShouldContain("of it free at running temperature (60 °C)");
        statement.ShouldContain("coming back since the treatment that ended on 2025-02-06 (target 50 mg/kg)");
        statement.ShouldContain(
            "rising since the treatment, 42 mg/kg per 30 days, expected to reach the alarm limit of 500 mg/kg around 2025-12-2"
        );
        statement.Count(letter => letter == '.').ShouldBe(1);
        assessment.Alerts.Single().Key.ShouldBe("M1/undated/water");
        assessment.Recommendations.ShouldAllBe(one => one.Problems.Single() == assessment.Problems[0]);
    }

    [Fact]
    public void Evidence_is_that_of_every_finding_and_nothing_stands_twice()
    {
        var problem = ComingBack().Problems.Single();
        var evidence = problem.Evidence[Measurands.WaterContent].ToList();

        evidence.ShouldBeUnique();
        problem.Findings.SelectMany(one => one.Evidence).ShouldAllBe(item => evidence.Contains(item));
        evidence.Count(item => item.Name == "reading").ShouldBe(1);
        evidence.Where(item => item.Name == "limit").Select(item => item.Value).ShouldBe([200, 500]);
    }

    [Fact]
    public void From_the_forecast_to_the_alarm_is_one_entry_of_the_journal_that_escalates()
    {
        var history = Invented.History([
            .. Enumerable
                .Range(0, 14)
                .Select(i => Invented.Sample(i, 30 * i, (Measurands.AcidNumber, new Reading(0.10 + 0.02 * i)))),
        ]);
        var limit = Above(Measurands.AcidNumber, 0.25, 0.35);
        var journal = AlertJournal.Empty;
        foreach (var month in Enumerable.Range(2, 12))
        {
            journal = journal.Reconcile(Assess(history, 30 * month + 1, limit));
        }

        var kinds = journal.Pending.Select(change => change.Kind).ToList();

        journal.Entries.ShouldHaveSingleItem().Key.ShouldBe("M1/undated/oil-ageing");
        kinds[0].ShouldBe(JournalChangeKind.Raised);
        kinds.Count(kind => kind == JournalChangeKind.Escalated).ShouldBe(1);
        kinds.ShouldAllBe(kind => kind == JournalChangeKind.Raised || kind == JournalChangeKind.Escalated);
        journal.Entries[0].Sentence.ShouldContain("above the alarm limit of 0.35 mgKOH/g");
    }

    [Fact]
    public void What_lies_beyond_a_limit_on_its_better_side_is_a_problem_of_its_own()
    {
        var assessment = One(
            [(Measurands.Rpvot, 200), (Measurands.Antioxidant, 130), (Measurands.BaseNumber, 20)],
            Below(Measurands.Rpvot, null, 300),
            Above(Measurands.Antioxidant, 120, null),
            Above(Measurands.BaseNumber, 12, null)
        );

        assessment
            .Problems.Select(one => $"{one.Severity} {one.Subject}")
            .ShouldBe(["Alarm oil-ageing", "Alert other/antioxidant/upper", "Alert other/base-number/upper"]);
        assessment.Problems[2].Statement.ShouldStartWith("Base number 20 mgKOH/g on 2025-01-16, above the alert limit");
        assessment
            .Recommendations.Single(one => one.Action == RecommendedAction.InvestigateCause)
            .Problems.ShouldBe([assessment.Problems[1], assessment.Problems[2]]);
    }

    [Fact]
    public void Measurands_of_the_user_join_the_problem_of_their_topic_and_without_one_each_is_its_own()
    {
        Measurand Ours(string id, MeasurandTopic topic) =>
            new(id, $"our {id}", "u", LimitSide.Upper, NaturalScale.Linear, 0, 100, topic: topic);
        var (ferrous, noise, smell) = (
            Ours("ferrous-debris", MeasurandTopic.Wear),
            Ours("noise", MeasurandTopic.Other),
            Ours("smell", MeasurandTopic.Other)
        );
        var assessment = One(
            [(Measurands.Iron, 30), (ferrous, 60), (noise, 60), (smell, 60)],
            Above(Measurands.Iron, 20, 40),
            Above(ferrous, 40, 50),
            Above(noise, 40, 50),
            Above(smell, 40, 50)
        );

        assessment.Problems.Select(one => one.Subject).ShouldBe(["wear", "other/noise/upper", "other/smell/upper"]);
        assessment
            .Problems[0]
            .Statement.ShouldBe(
                "Wear: our ferrous-debris 60 u on 2025-01-16, above the alarm limit of 50 u; also iron 30 mg/kg (alert limit 20)."
            );
    }

    /// <summary>The topic of each measurand of the invented machines, by hand.</summary>
    private static ProblemTopic TopicOf(Finding finding) =>
        finding.Code switch
        {
            FindingCode.SuspectSample or FindingCode.RecordFault or FindingCode.UnrecordedChange =>
                ProblemTopic.Records,
            FindingCode.SampleOverdue => ProblemTopic.Sampling,
            FindingCode.CleanupUnderWay
            or FindingCode.CleanupStalled
            or FindingCode.CleanupTargetReached
            or FindingCode.CleanupSourcesDisagree => ProblemTopic.Cleanup,
            _ => finding.Measurand.Id switch
            {
                "water-content" => ProblemTopic.Water,
                "acid-number" => ProblemTopic.OilAgeing,
                "iron" => ProblemTopic.Wear,
                "particles-4um" or "particles-6um" => ProblemTopic.Dirt,
                _ => ProblemTopic.OilIdentity,
            },
        };

    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue - 1];

    [Fact]
    public void On_any_machine_findings_alerts_and_recommendations_share_their_problems() =>
        Seeds.Holds(
            seed =>
            {
                var records = new InventedHistories(seed);
                var assessment = ConditionAssessor.Assess(
                    records.History(),
                    InventedHistories.Limits,
                    new AssessmentOptions(records.End.AddDays(seed % 200))
                );
                var problems = assessment.Problems;

                problems.SelectMany(problem => problem.Findings).ShouldBe(assessment.Findings, ignoreOrder: true);
                problems.Select(problem => problem.Subject).ShouldBeUnique();
                problems.Select(problem => problem.Severity).ShouldBeInOrder(SortDirection.Descending);
                foreach (var problem in problems)
                {
                    problem.Findings.ShouldAllBe(finding => TopicOf(finding) == problem.Topic);
                    problem.Findings.Select(finding => finding.Severity).ShouldBeInOrder(SortDirection.Descending);
                    problem.Severity.ShouldBe(problem.Findings.Max(finding => finding.Severity));
                    Says(problem);
                }

                assessment
                    .Alerts.Select(alert => alert.Problem)
                    .ShouldBe(problems.Where(problem => problem.Severity >= Severity.Alert));
                assessment.Alerts.ShouldAllBe(alert =>
                    alert.Key == $"M1/{assessment.Charge}/{alert.Problem.Subject}"
                    && alert.Problem.Subject.StartsWith(PlainText.Kebab(alert.Problem.Topic), StringComparison.Ordinal)
                    && alert.Findings.All(finding => TopicOf(finding) == alert.Problem.Topic)
                );
                foreach (var recommendation in assessment.Recommendations)
                {
                    recommendation
                        .Reasons.Select(TopicOf)
                        .Distinct()
                        .ShouldBe(
                            recommendation.Problems.Select(problem => problem.Topic).Distinct(),
                            ignoreOrder: true
                        );
                    recommendation.Problems.ShouldAllBe(problem =>
                        problem.Findings.Any(finding => recommendation.Reasons.Contains(finding))
                    );
                }

                problems
                    .Where(problem => problem.Severity >= Severity.Alert)
                    .ShouldAllBe(problem => assessment.Recommendations.Any(one => one.Problems.Contains(problem)));
            },
            iter: 150
        );

    /// <summary>One sentence that names every measurand beyond a limit, and the word of the gravest limit.</summary>
    private static void Says(Problem problem)
    {
        var statement = problem.Statement;
        statement.ShouldEndWith(".");
        statement.ShouldNotContain(". ");
        if (problem.Topic is ProblemTopic.Records or ProblemTopic.Sampling or ProblemTopic.Cleanup)
        {
            return;
        }

        foreach (var finding in problem.Findings)
        {
            statement.ShouldContain(finding.Measurand.Name);
        }

        foreach (var limit in problem.Findings.OfType<LimitFinding>().Where(one => one.Severity == Severity.Alarm))
        {
            statement.ShouldContain("alarm limit", Case.Sensitive, limit.ToString());
        }

        if (
            problem.Severity < Severity.Alarm
            && problem.Findings.All(one => one is LimitFinding { Severity: Severity.Alert })
        )
        {
            statement.ShouldNotContain("alarm");
        }
    }

    [Fact]
    public void The_order_of_limits_renames_nothing() =>
        Seeds.Holds(
            seed =>
            {
                var records = new InventedHistories(seed);
                var options = new AssessmentOptions(records.End.AddDays(seed % 200));
                var random = new Random(seed);
                var shuffled = new LimitSet(
                    "invented",
                    [.. InventedHistories.Limits.Limits.OrderBy(_ => random.Next())]
                );
                string[] Told(LimitSet limits)
                {
                    var assessment = ConditionAssessor.Assess(records.History(), limits, options);
                    return
                    [
                        .. assessment.Alerts.Select(alert => $"{alert.Key} {alert.Severity}"),
                        .. assessment.Problems.Select(problem => $"{problem.Subject} {problem.Findings.Count}"),
                        .. assessment.Recommendations.Select(one =>
                            $"{one.Action} {string.Join(" ", one.Problems.Select(problem => problem.Subject))}"
                        ),
                    ];
                }

                Told(shuffled).ShouldBe(Told(InventedHistories.Limits));
            },
            iter: 100
        );
}
