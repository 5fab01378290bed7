using System.Text.Json;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>What trends become in an assessment: remaining life, return after a treatment, unrecorded changes, the next sample.</summary>
public class TrendFindingTests
{
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(400);

    private static readonly LimitSet Limits = new(
        "test",
        [
            Upper(Measurands.WaterContent, 300, 800),
            Upper(Measurands.AcidNumber, 0.3, 0.5),
            Upper(Measurands.Iron, 50, 100),
        ]
    );

    private static Limit Upper(Measurand measurand, double alert, double alarm) =>
        new(measurand, LimitKind.Absolute, new LimitBand(alert, alarm), null, Source.CommonPractice("invented"));

    private static IEnumerable<OilSample> Samples(
        Func<int, double> water,
        Func<int, double> acid,
        Func<int, double> iron,
        int count = 13
    ) =>
        Enumerable
            .Range(0, count)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.WaterContent, new Reading(water(i))),
                    (Measurands.AcidNumber, new Reading(acid(i))),
                    (Measurands.Iron, new Reading(iron(i)))
                )
            );

    private static double Steady(int i) => i % 3;

    private static ConditionAssessment Assess(OilHistory history, SamplingPlan? plan = null) =>
        ConditionAssessor.Assess(history, Limits, new AssessmentOptions(Now, sampling: plan));

    [Fact]
    public void A_level_that_jumps_with_two_measurands_where_nothing_is_recorded_is_asked_about()
    {
        // Iron and acid number fall to those of a fresh oil between samples 6 and 7.
        var history = Invented.History(
            Samples(
                i => 50 + Steady(i),
                i => (i <= 6 ? 0.25 : 0.1) + 0.002 * Steady(i),
                i => (i <= 6 ? 30 : 4) + Steady(i)
            )
        );
        var finding = Assess(history).Findings.OfType<UnrecordedChangeFinding>().Single();

        finding.Before.SampleNumber.ShouldBe("S6");
        finding.After.SampleNumber.ShouldBe("S7");
        finding.States.Select(state => state.Measurand.Id).ShouldBe(["acid-number", "iron"]);
        Sentences
            .English.Of(finding)
            .ShouldBe(
                "Between 2025-07-05 and 2025-08-04 acid number and iron changed at once, with no event on record: an oil change or a large top-up? Trends of what got better start anew after it."
            );
    }

    [Theory]
    [InlineData(180, 1)] // at the moment of sample 6, which was taken before it
    [InlineData(190, 0)]
    [InlineData(210, 0)]
    [InlineData(215, 1)]
    public void An_event_recorded_there_answers_the_question_and_a_later_one_does_not(double day, int expected)
    {
        var history = Invented.History(
            Samples(
                i => 50 + Steady(i),
                i => (i <= 6 ? 0.25 : 0.1) + 0.002 * Steady(i),
                i => (i <= 6 ? 30 : 4) + Steady(i)
            ),
            new TopUp(Invented.Start.AddDays(day), Volume.FromLiters(1))
        );

        Assess(history).Findings.OfType<UnrecordedChangeFinding>().Count().ShouldBe(expected);
    }

    [Fact]
    public void One_measurand_that_jumps_alone_is_not_asked_about()
    {
        var history = Invented.History(
            Samples(i => 50 + Steady(i), i => 0.1 + 0.002 * Steady(i), i => (i <= 6 ? 30 : 4) + Steady(i))
        );
        var assessment = Assess(history);

        assessment.States[2].Trend.Assessment.Changes.Count.ShouldBe(1);
        assessment.Findings.OfType<UnrecordedChangeFinding>().ShouldBeEmpty();
    }

    [Fact]
    public void Water_that_comes_back_after_its_cleanup_is_an_alert_long_before_its_limit()
    {
        var run = new TreatmentRun(
            Invented.Start.AddDays(170),
            Invented.Start.AddDays(175),
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            60
        );
        var history = Invented.History(
            Samples(i => i < 6 ? 250 : 55 + 4 * (i - 6) + 0.5 * Steady(i), i => 0.1, i => 4 + Steady(i)),
            run
        );
        var assessment = Assess(history);

        var alert = assessment.Alerts.Single(one => one.Key == "M1/undated/water");
        Sentences
            .English.Of(alert.Findings.OfType<ReturnFinding>().Single())
            .ShouldBe(
                "Water content: rising again since the treatment that ended on 2025-06-30, now 79 mg/kg against its target of 60 mg/kg (7 readings)."
            );
        assessment.Recommendations.Select(one => one.Action).ShouldContain(RecommendedAction.FindWaterIngress);
    }

    [Fact]
    public void Water_that_stays_below_its_target_is_not_coming_back()
    {
        var run = new TreatmentRun(
            Invented.Start.AddDays(170),
            Invented.Start.AddDays(175),
            TreatmentKind.VacuumDehydration,
            Measurands.WaterContent,
            90
        );
        var history = Invented.History(
            Samples(i => i < 6 ? 250 : 55 + 4 * (i - 6) + 0.5 * Steady(i), i => 0.1, i => 4 + Steady(i)),
            run
        );

        Assess(history).Findings.OfType<ReturnFinding>().ShouldBeEmpty();
    }

    [Fact]
    public void A_machine_that_nobody_samples_is_an_alert()
    {
        var history = Invented.History(Samples(i => 50, i => 0.1, i => 4, count: 5));
        var assessment = Assess(history); // the last sample is of day 120, now is day 400

        var overdue = assessment.Findings.OfType<SampleOverdueFinding>().Single();
        overdue.Severity.ShouldBe(Severity.Alert);
        assessment.Alerts.Single().Key.ShouldBe("M1/undated/sampling");
        Sentences
            .English.Of(overdue)
            .ShouldBe("No sample since 2025-05-06; the sampling plan allows at most 180 days.");
        assessment.NextSample!.IsOverdue.ShouldBeTrue();
    }

    [Theory]
    [InlineData(40, 0)] // the last sample is of day 360, now is day 400
    [InlineData(39, 1)]
    public void A_sample_is_overdue_once_the_longest_interval_is_over(double longest, int expected) =>
        Assess(
            Invented.History(Samples(i => 50, i => 0.1, i => 4)),
            new SamplingPlan(Ratio.FromPercent(5), TimeSpan.FromDays(7), TimeSpan.FromDays(longest))
        )
            .Findings.OfType<SampleOverdueFinding>()
            .Count()
            .ShouldBe(expected);

    [Fact]
    public void The_next_sample_is_sooner_where_a_limit_is_near()
    {
        var plan = new SamplingPlan(Ratio.FromPercent(5), TimeSpan.FromDays(7), TimeSpan.FromDays(365));
        NextSample Next(double perMonth) =>
            Assess(
                Invented.History(Samples(i => 50, i => 0.1 + perMonth * i + 0.001 * Steady(i), i => 4 + Steady(i))),
                plan
            ).NextSample!;

        var calm = Next(0.001);
        var urgent = Next(0.025);
        urgent.At.ShouldBeLessThan(calm.At);
        urgent.Reason.ShouldBe(NextSampleReason.RiskReached);
        Sentences.English.Of(urgent).ShouldStartWith("The next sample is due by 2026-");
        calm.At.ShouldBe(Invented.Start.AddDays(360 + 365));
        calm.Reason.ShouldBe(NextSampleReason.LongestInterval);
    }

    [Fact]
    public void Ageing_names_the_limit_that_comes_first_and_how_the_trend_was_judged()
    {
        var history = Invented.History(
            Samples(i => 50 + Steady(i), i => 0.1 + 0.025 * i + 0.002 * Steady(i), i => 4 + Steady(i))
        );
        var assessment = Assess(history);
        var finding = assessment.Findings.OfType<RemainingLifeFinding>().Single();

        assessment.First.Shares[0].Life.Series.Measurand.Id.ShouldBe("acid-number");
        finding.ChanceWithinHorizon.ShouldBeGreaterThan(0.1);
        finding.Earliest.ShouldBeGreaterThan(Now);
        finding.Evidence.Select(item => item.Name).ShouldContain("trend by");
        finding.Evidence.Select(item => item.Name).ShouldContain("limit source");

        using var json = JsonDocument.Parse(assessment.ToJson());
        var acid = json.RootElement.GetProperty("states")[1];
        acid.GetProperty("trend").GetProperty("verdict").GetString().ShouldBe("rising");
        json.RootElement.GetProperty("firstLimit")[0].GetProperty("measurand").GetString().ShouldBe("acid-number");
        // The acid number rises by 0.02 mgKOH/g in 30 days or so: its slope is said with its unit, its interval and its scale.
        var slope = acid.GetProperty("trend").GetProperty("slope");
        slope.GetProperty("unit").GetString().ShouldBe("mgKOH/g");
        slope.GetProperty("scale").GetString().ShouldBe("linear");
        slope.GetProperty("perDays").GetInt32().ShouldBe(1);
        slope.GetProperty("lower").GetDouble().ShouldBeLessThan(slope.GetProperty("value").GetDouble());
        var told = json
            .RootElement.GetProperty("problems")
            .EnumerateArray()
            .SelectMany(problem => problem.GetProperty("findings").EnumerateArray())
            .Single(one => one.GetProperty("code").GetString() == "remaining-life-short");
        told.GetProperty("side").GetString().ShouldBe("upper");
        told.GetProperty("limit").GetProperty("value").GetDouble().ShouldBe(finding.Life.Limit);
        told.GetProperty("slope").GetProperty("value").GetDouble().ShouldBe(slope.GetProperty("value").GetDouble());
        told.GetProperty("evidence")
            .EnumerateArray()
            .Select(one => one.GetProperty("id").GetString())
            .ShouldContain("chance-10-percent-by");
        json.RootElement.GetProperty("nextSample").GetProperty("reason").GetString().ShouldNotBeNullOrEmpty();
    }

    [Fact]
    public void Scatter_without_a_trend_opens_no_work_request_however_near_the_limit()
    {
        // Iron scatters between 34 and 46 below its alert figure of 50.
        double[] scatter = [40, 44, 36, 42, 38, 45, 35, 41, 39, 43, 37, 46, 34];
        var assessment = Assess(Invented.History(Samples(i => 50, i => 0.1, i => scatter[i])));

        assessment.Alerts.ShouldBeEmpty();
    }

    [Fact]
    public void One_wild_reading_moves_neither_trend_nor_forecast_and_is_said()
    {
        double Iron(int i) => 10 + 2 * i + 0.5 * Steady(i);
        RemainingLifeFinding Life(Func<int, double> iron) =>
            Assess(Invented.History(Samples(i => 50, i => 0.1, iron))).Findings.OfType<RemainingLifeFinding>().Single();

        // A limit that is reached soon enough: 100 is far, so the planning horizon is stretched by the steep rise.
        double Steep(int i) => 4 * Iron(i) - 40;
        var clean = Life(i => Steep(i) / 1.3);
        var wild = Life(i => i == 5 ? 95 : Steep(i) / 1.3);

        Math.Abs((wild.Earliest - clean.Earliest).TotalDays).ShouldBeLessThan(20);
        wild.Evidence.ShouldContain(item => item.Name == "readings left out, wild" && item.Value == 1);
    }
}
