using System.Text.Json;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Advice;

/// <summary>What changes at once, from the record to the sentence: said after one reading, an alert from the second, and never hidden as an oil change.</summary>
public class SuddenChangeTests
{
    /// <summary>Invented scatter of about one, without any pattern.</summary>
    private static readonly double[] Scatter =
    [
        0.3,
        -1.1,
        0.8,
        0.2,
        -0.6,
        1.2,
        -0.9,
        0.5,
        -0.2,
        1.0,
        -1.3,
        0.1,
        0.7,
        -0.4,
        -0.8,
        0.9,
        0.4,
        -1.0,
        0.6,
        -0.3,
        0.1,
        0.2,
    ];

    private static Limit Upper(Measurand measurand, double alert, double? alarm = null) =>
        new(measurand, LimitKind.Absolute, new LimitBand(alert, alarm), null, Source.CommonPractice("invented"));

    private static readonly LimitSet Iron = new("invented", [Upper(Measurands.Iron, 100)]);

    private static readonly Limit Viscosity = new(
        Measurands.Viscosity40,
        LimitKind.Absolute,
        new LimitBand(50, 55),
        new LimitBand(42, 37),
        Source.CommonPractice("invented")
    );

    private static readonly LimitSet Several = new(
        "invented",
        [
            Upper(Measurands.WaterContent, 300, 500),
            Upper(Measurands.AcidNumber, 0.3, 0.5),
            Upper(Measurands.Iron, 100),
            Viscosity,
        ]
    );

    /// <summary>Monthly samples with scatter about a level for each sample, and five days later.</summary>
    private static ConditionAssessment Assess(
        LimitSet limits,
        int count,
        params (Measurand Measurand, Func<int, double> Level, double Scatter)[] rows
    ) =>
        ConditionAssessor.Assess(
            Invented.History(
                Enumerable
                    .Range(0, count)
                    .Select(i =>
                        Invented.Sample(
                            i,
                            30 * i,
                            [
                                .. rows.Select(row =>
                                    (row.Measurand, new Reading(row.Level(i) + row.Scatter * Scatter[i]))
                                ),
                            ]
                        )
                    )
            ),
            limits,
            new AssessmentOptions(Invented.Start.AddDays(30 * (count - 1) + 5))
        );

    private static Func<int, double> Step(double before, double after) => i => i < 12 ? before : after;

    private static ConditionAssessment IronAfter(int late) =>
        Assess(Iron, 12 + late, (Measurands.Iron, Step(30, 75), 1));

    private static IEnumerable<FindingCode> Codes(ConditionAssessment assessment) =>
        assessment.Findings.Select(finding => finding.Code);

    private static IEnumerable<RecommendedAction> Actions(ConditionAssessment assessment) =>
        assessment.Recommendations.Select(one => one.Action);

    private static void IsSampledSoon(ConditionAssessment assessment)
    {
        assessment.NextSample!.At.ShouldBe(assessment.History.Samples[^1].TakenAt.AddDays(14));
        assessment.NextSample.Reason.ShouldBe(NextSampleReason.SuddenChange);
        Sentences
            .English.Of(assessment.NextSample)
            .ShouldContain("far on the worse side, and another sample should confirm it");
    }

    [Fact]
    public void One_reading_is_said_and_asks_for_another()
    {
        var assessment = IronAfter(1);

        var finding = assessment.Findings.ShouldHaveSingleItem();
        (finding.Code, finding.Severity).ShouldBe((FindingCode.SuddenChange, Severity.Information));
        Sentences
            .English.Of(finding)
            .ShouldBe(
                "Iron: sudden change from about 30 to 76 mg/kg on 2026-01-01; to be confirmed by another sample."
            );
        finding
            .Evidence.Select(item => item.Name)
            .ShouldBe([
                "usual before",
                "usual since",
                "first read at",
                "readings since",
                "chance of such a change by scatter",
            ]);
        assessment.Alerts.ShouldBeEmpty();
        Actions(assessment).ShouldBe([RecommendedAction.SampleAgain]);
        Sentences
            .English.Of(assessment.States[0])
            .ShouldBe("sudden change from about 30 to 76 mg/kg, to be confirmed (13 readings)");
        IsSampledSoon(assessment);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(7)]
    public void From_the_second_on_it_is_one_alert_whose_key_stands_still(int late)
    {
        var assessment = IronAfter(late);

        var alert = assessment.Alerts.ShouldHaveSingleItem();
        (alert.Key, alert.Severity).ShouldBe(("M1/undated/wear", Severity.Alert));
        var finding = assessment.Findings.ShouldHaveSingleItem();
        Sentences
            .English.Of(finding)
            .ShouldBe($"Iron: changed at once from about 30 to 75 mg/kg since 2026-01-01 ({late} readings).");
        finding.Evidence.Single(item => item.Name == "usual before").Value!.Value.ShouldBe(30.15, 0.3);
        finding.Evidence.Single(item => item.Name == "readings since").Value.ShouldBe(late);
        Actions(assessment).ShouldBe([RecommendedAction.FindWear]);
        Sentences.English.Of(assessment.States[0]).ShouldStartWith("changed at once from about 30 to 75 mg/kg (");
        IsSampledSoon(assessment);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(9)]
    public void Eight_readings_are_the_usual_level(int late)
    {
        var assessment = IronAfter(late);

        assessment.Findings.ShouldBeEmpty();
        assessment.NextSample!.Reason.ShouldNotBe(NextSampleReason.SuddenChange);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 3)]
    [InlineData(3, 3)]
    public void What_came_back_is_no_news(int late, int back)
    {
        var assessment = Assess(Iron, 12 + late + back, (Measurands.Iron, i => i >= 12 && i < 12 + late ? 75 : 30, 1));

        assessment.Findings.ShouldBeEmpty();
        Sentences.English.Of(assessment.States[0]).ShouldStartWith("no significant trend");
        assessment.NextSample!.Reason.ShouldBe(NextSampleReason.LongestInterval);
    }

    /// <summary>Twelve times 4 mg/kg, then 5: the last digit of a spectrometer. It was a rise to 100 mg/kg within the year once.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(6)]
    public void Equal_readings_and_one_last_digit_more_are_nothing(int late)
    {
        var assessment = Assess(Iron, 12 + late, (Measurands.Iron, Step(4, 5), 0));

        assessment.Findings.ShouldBeEmpty();
        Sentences.English.Of(assessment.States[0]).ShouldStartWith("no significant trend");
    }

    /// <summary>A rise that was there before the jump stays an alert of its own.</summary>
    [Fact]
    public void A_jump_hides_no_rise_that_goes_on()
    {
        var assessment = Assess(Iron, 13, (Measurands.Iron, i => 30 + 4 * i + (i == 12 ? 12 : 0), 1));

        Codes(assessment).ShouldBe([FindingCode.RemainingLifeShort, FindingCode.SuddenChange]);
        Actions(assessment).ShouldBe([RecommendedAction.FindWear]);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    public void What_an_oil_change_leaves_is_told_once(int late)
    {
        var assessment = Assess(
            Several,
            12 + late,
            (Measurands.WaterContent, _ => 60, 1),
            (Measurands.AcidNumber, Step(0.25, 0.1), 0.004),
            (Measurands.Iron, Step(40, 5), 1),
            (Measurands.Viscosity40, Step(46, 44), 0.1)
        );

        Codes(assessment).ShouldBe([FindingCode.UnrecordedChange]);
        Sentences
            .English.Of(assessment.Findings[0])
            .ShouldStartWith(
                "Between 2025-12-02 and 2026-01-01 acid number and iron and viscosity at 40 °C changed at once"
            );
        assessment.Alerts.ShouldBeEmpty();
    }

    [Theory]
    [InlineData(1, Severity.Information)]
    [InlineData(2, Severity.Alert)]
    [InlineData(4, Severity.Alert)]
    public void A_leak_in_which_all_get_worse_is_no_oil_change(int late, Severity severity)
    {
        var assessment = Assess(
            Several,
            12 + late,
            (Measurands.WaterContent, Step(40, 95), 2),
            (Measurands.AcidNumber, Step(0.1, 0.25), 0.004),
            (Measurands.Iron, Step(10, 60), 1),
            (Measurands.Viscosity40, _ => 46, 0.1)
        );

        Codes(assessment).ShouldNotContain(FindingCode.UnrecordedChange);
        assessment
            .Findings.Where(finding => finding.Code == FindingCode.SuddenChange)
            .Select(finding => (finding.Measurand.Id, finding.Severity))
            .ShouldBe([("water-content", severity), ("acid-number", severity), ("iron", severity)]);
        IsSampledSoon(assessment);
    }

    /// <summary>Fuel, or a cooler that leaks: the viscosity falls, and what is worse stays an alert though another oil would change the viscosity as well.</summary>
    [Fact]
    public void Dilution_is_asked_about_as_another_oil_and_hides_no_alert()
    {
        var assessment = Assess(
            Several,
            14,
            (Measurands.WaterContent, Step(40, 95), 2),
            (Measurands.AcidNumber, _ => 0.1, 0.004),
            (Measurands.Iron, Step(10, 60), 1),
            (Measurands.Viscosity40, Step(46, 43), 0.1)
        );

        Codes(assessment).ShouldContain(FindingCode.UnrecordedChange);
        assessment
            .Alerts.Select(alert => alert.Key)
            .ShouldBe(["M1/undated/water", "M1/undated/wear", "M1/undated/oil-identity/lower"]);
        Actions(assessment)
            .ShouldBe([
                RecommendedAction.VacuumDehydrate,
                RecommendedAction.CheckOilIdentity,
                RecommendedAction.FindWear,
            ]);
    }

    public static TheoryData<string, LimitSide, double, double, double, RecommendedAction, string> OneMeasurand() =>
        new()
        {
            {
                "rpvot",
                LimitSide.Lower,
                900,
                500,
                20,
                RecommendedAction.PlanOilChange,
                "RPVOT: changed at once from about 900 to 500 min"
            },
            {
                "viscosity-40c",
                LimitSide.Both,
                46,
                48.5,
                0.1,
                RecommendedAction.CheckOilIdentity,
                "Viscosity at 40 °C: changed at once from about 46 to 48.5 mm²/s"
            },
            {
                "viscosity-40c",
                LimitSide.Both,
                46,
                43.5,
                0.1,
                RecommendedAction.CheckOilIdentity,
                "Viscosity at 40 °C: changed at once from about 46 to 43.5 mm²/s"
            },
            {
                "particles-4um",
                LimitSide.Upper,
                2000,
                20_000,
                100,
                RecommendedAction.FilterInKidneyLoop,
                "Particles ≥ 4 µm(c): changed at once from about 2000 to 20000 per mL"
            },
        };

    /// <summary>Lower limits, limits on both sides, logarithms: the same from one reading to two.</summary>
    [Theory]
    [MemberData(nameof(OneMeasurand))]
    public void Every_kind_of_measurand_tells_it(
        string id,
        LimitSide side,
        double before,
        double after,
        double scatter,
        RecommendedAction action,
        string sentence
    )
    {
        var measurand = Measurands.All.Single(one => one.Id == id);
        measurand.Worse.ShouldBe(side);
        var far = new LimitBand(before / 20, null);
        var limit = new Limit(
            measurand,
            LimitKind.Absolute,
            side == LimitSide.Lower ? null : new LimitBand(20 * after, null),
            side == LimitSide.Upper ? null : far,
            Source.CommonPractice("invented")
        );
        ConditionAssessment After(int late) =>
            Assess(new LimitSet("invented", [limit]), 12 + late, (measurand, Step(before, after), scatter));

        After(1).Findings.OfType<SuddenChangeFinding>().Single().Severity.ShouldBe(Severity.Information);
        Actions(After(1)).ShouldContain(RecommendedAction.SampleAgain);
        IsSampledSoon(After(1));

        var two = After(2);
        two.Findings.OfType<SuddenChangeFinding>().Single().Severity.ShouldBe(Severity.Alert);
        Sentences.English.Of(two.Findings.OfType<SuddenChangeFinding>().Single()).ShouldStartWith(sentence);
        Actions(two).ShouldContain(action);
        IsSampledSoon(two);

        // The same step the other way is to the better where one side is.
        var back = Assess(new LimitSet("invented", [limit]), 14, (measurand, Step(after, before), scatter));
        Codes(back).Contains(FindingCode.SuddenChange).ShouldBe(side == LimitSide.Both);
    }

    /// <summary>A laboratory's method differs from itself by 7 mg/kg of water: a step within that is no alert, however even the readings were.</summary>
    [Theory]
    [InlineData(5, false)]
    [InlineData(60, true)]
    public void A_step_within_the_repeatability_of_the_method_is_no_alert(double step, bool isAlert) =>
        Assess(
            new LimitSet("invented", [Upper(Measurands.WaterContent, 90)]),
            14,
            (Measurands.WaterContent, Step(20, 20 + step), 0.05)
        )
            .Alerts.Any()
            .ShouldBe(isAlert);

    /// <summary>Water from 76 to 1035 mg/kg in six weeks: whoever reads alarm in one place reads of no calm anywhere else.</summary>
    [Theory]
    [InlineData(new double[] { 76, 310 })]
    [InlineData(new double[] { 76, 80, 150, 310 })]
    [InlineData(new double[] { 76, 80, 150, 310, 420 })]
    [InlineData(new double[] { 76, 80, 150, 310, 420, 700 })]
    [InlineData(new double[] { 76, 80, 150, 310, 420, 700, 1035 })]
    [InlineData(new double[] { 76, 74, 79, 77, 81, 76, 1035 })]
    [InlineData(new double[] { 76, 74, 79, 77, 81, 560, 1035 })]
    [InlineData(new double[] { 76, 900, 79, 700, 81, 560, 1035 })]
    public void Beside_an_alarm_nothing_says_that_there_is_no_trend(double[] water)
    {
        var history = Invented.History(
            water.Select((value, i) => Invented.Sample(i, 7 * i, (Measurands.WaterContent, new Reading(value))))
        );
        var assessment = ConditionAssessor.Assess(
            history,
            new LimitSet("invented", [Upper(Measurands.WaterContent, 300, 500)]),
            new AssessmentOptions(Invented.Start.AddDays(7 * water.Length))
        );

        (assessment.Worst >= Severity.Alert).ShouldBeTrue();
        string[] all =
        [
            assessment.ToString(),
            assessment.States[0].ToString(),
            .. assessment.Findings.Select(Sentences.English.Of),
            string.Join(' ', Texts(JsonDocument.Parse(assessment.ToJson()).RootElement)),
        ];
        foreach (var calm in new[] { "no significant trend", "no trend", "too few readings (" })
        {
            all.ShouldAllBe(text => !text.Contains(calm, StringComparison.OrdinalIgnoreCase));
        }

        assessment.NextSample!.At.ShouldBe(history.Samples[^1].TakenAt.AddDays(14));
    }

    private static IEnumerable<string> Texts(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Object => element.EnumerateObject().SelectMany(one => Texts(one.Value)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(Texts),
            JsonValueKind.String => [element.GetString()!],
            _ => [],
        };
}
