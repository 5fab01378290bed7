using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>What limits with confirmations, rates of change and top-ups become in an assessment.</summary>
public class LimitFindingTests
{
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(400);
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private static IEnumerable<OilSample> Acid(Func<int, double> value, Func<int, double>? hours = null) =>
        Enumerable
            .Range(0, 13)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.AcidNumber, new Reading(value(i))),
                    (Measurands.OilHours, new Reading(hours?.Invoke(i) ?? 0))
                )
            );

    private static ConditionAssessment Assess(OilHistory history, Limit limit, bool overOilHours = false) =>
        ConditionAssessor.Assess(
            history,
            new LimitSet("test", [limit]),
            new AssessmentOptions(Now, TimeSpan.FromDays(3650), overOilHours: overOilHours)
        );

    private static Limit Absolute(int confirmations = 1) =>
        new(
            Measurands.AcidNumber,
            LimitKind.Absolute,
            new LimitBand(0.3, 0.5),
            null,
            AnySource,
            confirmations: confirmations
        );

    [Fact]
    public void A_single_exceedance_asks_for_another_sample_and_opens_no_work_request()
    {
        var assessment = Assess(
            Invented.History(Acid(i => i == 12 ? 0.6 : 0.1 + 0.01 * (i % 2))),
            Absolute(confirmations: 2)
        );

        var finding = assessment.Findings.OfType<LimitFinding>().Single();
        finding.Code.ShouldBe(FindingCode.LimitNotConfirmed);
        assessment.Alerts.ShouldBeEmpty();
        assessment.Recommendations.Select(one => one.Action).ShouldContain(RecommendedAction.SampleAgain);
        Sentences
            .English.Of(finding)
            .ShouldBe(
                "Acid number: 0.6 mgKOH/g on 2026-01-01, above the alarm limit of 0.5 mgKOH/g; not yet confirmed by a second sample (common practice, no source: invented)."
            );
    }

    [Fact]
    public void An_alert_says_since_when()
    {
        var assessment = Assess(Invented.History(Acid(i => i >= 9 ? 0.6 : 0.1 + 0.01 * (i % 2))), Absolute());

        assessment
            .Findings.OfType<LimitFinding>()
            .Single()
            .Evidence.ShouldContain(item => item.Name == "beyond since" && item.Text == "2025-10-03");
    }

    [Fact]
    public void A_rate_of_change_is_an_alert_of_its_own_with_its_span()
    {
        var limit = new Limit(
            Measurands.AcidNumber,
            LimitKind.RateOfChange,
            new LimitBand(0.1, 0.4),
            null,
            AnySource,
            per: TimeSpan.FromDays(30)
        );
        var assessment = Assess(Invented.History(Acid(i => i == 12 ? 0.35 : 0.1)), limit);

        var alert = assessment.Alerts.Single();
        alert.Key.ShouldBe("M1/undated/oil-ageing");
        Sentences
            .English.Of(alert.Findings[0])
            .ShouldBe(
                "Acid number: changed at 0.25 mgKOH/g per 30 days to 0.35 mgKOH/g on 2026-01-01; the alert limit is 0.1 (common practice, no source: invented)."
            );
    }

    [Fact]
    public void A_reading_out_of_its_own_history_says_so_in_its_key()
    {
        var limit = new Limit(Measurands.AcidNumber, LimitKind.OwnHistory, new LimitBand(95, null), null, AnySource);
        ConditionAssessment With(int beyond) =>
            Assess(Invented.History(Acid(i => i > 12 - beyond ? 0.35 : 0.1 + 0.01 * (i % 2))), limit);

        // A percentile is passed by chance now and then: one reading waits for another.
        With(1).Findings.OfType<LimitFinding>().Single().Code.ShouldBe(FindingCode.LimitNotConfirmed);
        With(1).Alerts.ShouldBeEmpty();
        With(2).Findings.OfType<LimitFinding>().Single().Code.ShouldBe(FindingCode.OutOfTheUsual);
        With(2).Alerts.Select(alert => alert.Key).ShouldContain("M1/undated/oil-ageing");
    }

    [Fact]
    public void A_top_up_does_not_hide_ageing()
    {
        // 0.02 mgKOH/g a month; 20 % of the charge topped up in the middle, new oil 0.1.
        double Level(int month) => month <= 6 ? 0.1 + 0.02 * month : 0.1 + 0.02 * month - 0.2 * 0.13;
        var history = Invented.History(Acid(Level), new TopUp(Invented.Start.AddDays(195), Volume.FromLiters(200)));
        var state = Assess(history, Absolute()).States.Single();

        state.TopUps.ShouldBe(TopUpOutcome.Corrected);
        var (days, values) = state.Trend.Series.ToColumns();
        ((values[^1] - values[0]) / (days[^1] - days[0]) * 30).ShouldBe(0.02, 1e-9);
        state.Latest!.Reading.Value.ShouldBe(Level(12), 1e-12);
    }

    [Fact]
    public void Over_oil_hours_a_machine_at_rest_does_not_age()
    {
        // Ageing of 0.05 mgKOH/g per 1000 h with a rest of half a year.
        double Hours(int month) => month <= 3 ? 700 * month : Math.Max(2100, 700 * (month - 6));
        var scatter = new[] { 0.001, -0.002, 0.0015, -0.0005 };
        var history = Invented.History(Acid(i => 0.1 + 5e-5 * Hours(i) + scatter[i % 4], Hours));

        RemainingLife.Forecast Life(bool overOilHours) =>
            (RemainingLife.Forecast)Assess(history, Absolute(), overOilHours).States.Single().Lives.Single();

        static TimeSpan Width(RemainingLife.Forecast life)
        {
            life.Crossing.TryAt(0.1, out var p10).ShouldBeTrue();
            life.Crossing.TryAt(0.5, out var p50).ShouldBeTrue();
            return p50 - p10;
        }

        var byHours = Life(true);
        var byCalendar = Life(false);
        Width(byHours).ShouldBeLessThan(Width(byCalendar) / 2);
        byHours.Series.IsOverOilHours.ShouldBeTrue();
    }

    [Fact]
    public void Within_the_dead_band_the_sentence_says_so()
    {
        var limit = new Limit(
            Measurands.AcidNumber,
            LimitKind.Absolute,
            new LimitBand(0.3, 0.5),
            null,
            AnySource,
            deadBand: 0.05
        );
        var assessment = Assess(
            Invented.History(
                Acid(i =>
                    i == 11 ? 0.32
                    : i == 12 ? 0.28
                    : 0.1
                )
            ),
            limit
        );

        Sentences
            .English.Of(assessment.Findings.OfType<LimitFinding>().Single())
            .ShouldBe(
                "Acid number: 0.28 mgKOH/g on 2026-01-01, back inside the alert limit of 0.3 mgKOH/g, but by less than the dead band (common practice, no source: invented)."
            );
    }

    [Fact]
    public void A_total_known_only_to_be_below_a_figure_proves_no_free_water()
    {
        ConditionAssessment Water(Qualifier qualifier) =>
            Assess(
                Invented.History([Invented.Sample(0, 390, (Measurands.WaterContent, new Reading(500, qualifier)))]),
                Absolute()
            );

        Water(Qualifier.LessThan).Findings.ShouldBeEmpty();
        Water(Qualifier.None).Findings.OfType<FreeWaterFinding>().Count().ShouldBe(1);
    }

    [Fact]
    public void A_sensor_that_reports_water_content_itself_is_heard()
    {
        var history = OilHistory.Create(
            Invented.Machine,
            [],
            [
                new SensorReading(
                    Invented.Start.AddDays(390),
                    new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(900) }
                ),
            ],
            []
        );

        Assess(history, Absolute()).Water.ShouldBeOfType<WaterInOil.Split>().Point.Reading.Value.ShouldBe(900);
    }

    [Fact]
    public void A_sample_after_now_does_not_make_an_earlier_one_suspect()
    {
        // Until day 300 the viscosity has been 46 and then 70: whether the 70 is another oil is only known once the 46 comes back.
        OilSample Sample(int i, double viscosity, double zinc) =>
            Invented.Sample(
                i,
                60 * i,
                (Measurands.Viscosity40, new Reading(viscosity)),
                (Measurands.Zinc, new Reading(zinc))
            );
        OilSample[] samples =
        [
            .. Enumerable.Range(0, 6).Select(i => Sample(i, i == 5 ? 70 : 46 + 0.1 * (i % 3), i == 5 ? 30 : 410 + i)),
            .. Enumerable.Range(6, 6).Select(i => Sample(i, 46 + 0.1 * (i % 3), 410 + i)),
        ];
        string Said(IEnumerable<OilSample> known) =>
            ConditionAssessor
                .Assess(
                    Invented.History(known).Until(Invented.Start.AddDays(300)),
                    new LimitSet("test", [Absolute()]),
                    new AssessmentOptions(Invented.Start.AddDays(300))
                )
                .ToJson();

        Said(samples).ShouldBe(Said(samples.Take(6)));
    }

    private static ConditionAssessment Water(Func<int, double> value, params OilEvent[] events) =>
        Assess(
            Invented.History(
                Enumerable
                    .Range(0, 13)
                    .Select(i => Invented.Sample(i, 30 * i, (Measurands.WaterContent, new Reading(value(i))))),
                events
            ),
            new Limit(Measurands.WaterContent, LimitKind.Absolute, new LimitBand(300, 800), null, AnySource)
        );

    private static TreatmentRun Treatment(double from, double? to) =>
        new(
            Invented.Start.AddDays(from),
            to is { } end ? Invented.Start.AddDays(end) : null,
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            60
        );

    [Theory]
    [InlineData(false, 0, false)] // much water, but neither rising nor back after a treatment
    [InlineData(true, 0, true)]
    [InlineData(false, 10, true)] // 350 to 470 mg/kg, on the way to 800
    public void Water_that_rises_or_is_there_after_a_treatment_has_a_way_in(
        bool isTreated,
        double perMonth,
        bool expected
    )
    {
        var assessment = Water(i => 350 + perMonth * i + i % 2, isTreated ? [Treatment(0.5, 1)] : []);

        assessment.Findings.OfType<LimitFinding>().Count().ShouldBe(1);
        assessment.Findings.OfType<ReturnFinding>().ShouldBeEmpty();
        assessment.Findings.OfType<RemainingLifeFinding>().Any().ShouldBe(perMonth > 0);
        assessment.Recommendations.Any(one => one.Action == RecommendedAction.FindWaterIngress).ShouldBe(expected);
    }

    [Fact]
    public void Water_beyond_its_limit_while_it_is_treated_has_a_way_in_and_needs_no_second_treatment()
    {
        var actions = Water(i => 350 + i % 2, Treatment(350, null)).Recommendations.Select(one => one.Action).ToList();

        actions.ShouldContain(RecommendedAction.FindWaterIngress);
        actions.ShouldNotContain(RecommendedAction.VacuumDehydrate);
    }
}
