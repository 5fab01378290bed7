using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Advice;

/// <summary>Invented plants from records to sentence: what is said must lead to the right act, and no sentence may contradict another.</summary>
public class PlantTests
{
    /// <summary>Invented scatter of about one, without any pattern.</summary>
    private static readonly double[] Scatter = [0.4, -0.9, 0.7, -0.3, 1.1, -0.6, 0.2, -1.2, 0.9, 0.1, -0.8, 0.5];

    private static Limit Upper(Measurand measurand, double? alert, double? alarm, double deadBand = 0) =>
        new(measurand, LimitKind.Absolute, new LimitBand(alert, alarm), null, Source.UserData("invented"), deadBand);

    private static double At(int i) => Scatter[i % Scatter.Length];

    private static IEnumerable<OilSample> Monthly(Measurand measurand, int count, Func<int, double> value) =>
        Monthly(measurand, count, i => new Reading(value(i)));

    private static IEnumerable<OilSample> Monthly(Measurand measurand, int count, Func<int, Reading> reading) =>
        Enumerable.Range(0, count).Select(i => Invented.Sample(i, 30 * i, (measurand, reading(i))));

    private static ConditionAssessment Assess(IEnumerable<OilSample> samples, Limit limit, double daysLater = 3)
    {
        var history = Invented.History(samples);
        var asOf = history.Samples[^1].TakenAt.AddDays(daysLater);
        return ConditionAssessor.Assess(history, new LimitSet("invented", [limit]), new AssessmentOptions(asOf));
    }

    private static string State(ConditionAssessment assessment) => assessment.States.ShouldHaveSingleItem().ToString();

    private static TimeSpan UntilNext(ConditionAssessment assessment) =>
        assessment.NextSample!.At - assessment.History.Samples[^1].TakenAt;

    [Fact]
    public void A_counter_at_the_end_of_its_range_is_not_expected_to_reach_the_limit_there()
    {
        var assessment = Assess(
            Monthly(
                Measurands.Particles4,
                14,
                i => i < 12 ? new Reading(400 * Math.Exp(0.17 * i)) : new Reading(6000, Qualifier.GreaterThan)
            ),
            Upper(Measurands.Particles4, 3000, 6000)
        );

        assessment.States[0].Lives.ShouldHaveSingleItem().ShouldBeOfType<RemainingLife.AlreadyCrossed>();
        assessment.Problems.ShouldHaveSingleItem().Statement.ShouldNotContain("expected to reach");
    }

    [Fact]
    public void A_mean_pace_that_leads_to_another_date_is_said_to_be_a_mean()
    {
        // Flat for three years, then 3 a month: at the mean pace of half a milligram the alarm would be years away.
        var hastening = Assess(
            Monthly(Measurands.Iron, 40, i => 12 + At(i) + 3 * Math.Max(0, i - 34)),
            Upper(Measurands.Iron, 45, 50)
        );
        hastening
            .Problems.ShouldHaveSingleItem()
            .Statement.ShouldContain("per 30 days on average and faster of late, expected to reach the alarm limit");
        Sentences.German.Of(hastening.Problems[0]).ShouldContain("in 30 Tagen im Mittel und zuletzt schneller, ");

        // What levels off rises on average, and does not get there.
        State(
                Assess(
                    Monthly(Measurands.MembranePatchColour, 28, i => 26 - 15 * Math.Exp(-i / 6.0) + 0.3 * At(i)),
                    Upper(Measurands.MembranePatchColour, 28, 35)
                )
            )
            .ShouldContain("per 30 days on average (28 readings); limit 35: not within five years");

        // An even rise needs no such word.
        State(Assess(Monthly(Measurands.Iron, 24, i => 10 + i + At(i)), Upper(Measurands.Iron, 60, 80)))
            .ShouldNotContain("on average");
    }

    [Fact]
    public void What_nobody_has_looked_at_for_long_is_not_expected_to_reach_its_limit_tomorrow()
    {
        var samples = Monthly(Measurands.AcidNumber, 20, i => 0.12 + 0.01 * i + 0.002 * At(i)).ToList();
        var limit = Upper(Measurands.AcidNumber, null, 0.33);
        var late = Assess(samples, limit, daysLater: 170);

        var statement = late.Problems.Single(one => one.Topic == ProblemTopic.OilAgeing).Statement;
        statement.ShouldContain(
            "so that the alarm limit of 0.33 mgKOH/g is passed by now with a chance of 99 %, unseen"
        );
        statement.ShouldNotContain("expected to reach");
        Sentences.English.Of(late.Findings[0]).ShouldContain("past it by now with a chance of 99 %, unseen");
        State(late).ShouldEndWith("passed by now with a chance of 99 %, unseen since the last reading");

        // The first of all limits is as surely passed as this one is.
        late.First.Shares.ShouldHaveSingleItem().Chance.ShouldBeGreaterThan(0.98);
        late.First.ChanceOfNone.ShouldBeLessThan(0.02);
        late.First.TryAt(0.5, out var middle).ShouldBeTrue();
        (middle - late.Options.AsOf).TotalDays.ShouldBeLessThan(1);

        Assess(samples, limit).Problems.ShouldHaveSingleItem().Statement.ShouldContain("expected to reach");

        // So sure that nothing of the chance is left for later: that is not 'far', and the maintenance system hears of it.
        var exact = Assess(
            Monthly(Measurands.AcidNumber, 24, i => 0.1 + 0.0117 * i + 0.0015 * At(i)),
            Upper(Measurands.AcidNumber, null, 0.38),
            daysLater: 170
        );
        State(exact).ShouldContain("passed by now with a chance of 99 %");
        exact.States[0].Lives[0].ShouldBeOfType<RemainingLife.NoLatestDate>().P10.ShouldBe(exact.Options.AsOf);
        exact.Alerts.ShouldContain(one => one.Problem.Topic == ProblemTopic.OilAgeing);
        exact.First.ChanceBefore(exact.Options.AsOf.AddDays(100)).ShouldBeInRange(0, 1);
        exact.ToJson().ShouldContain("no-latest-date");
        exact.Findings.OfType<RemainingLifeFinding>().Single().ChanceWithinHorizon.ShouldBeGreaterThan(0.99);
    }

    [Fact]
    public void Who_is_told_to_sample_again_before_acting_is_not_told_to_do_so_in_half_a_year()
    {
        // The latest reading alone is beyond the alert figure, and the alarm is far.
        var alert = Assess(
            Monthly(Measurands.Iron, 24, i => i == 23 ? 20.4 : 18.9 + 0.9 * At(i)),
            Upper(Measurands.Iron, 20, 90)
        );
        alert.Findings.ShouldNotContain(one => one is SuddenChangeFinding);
        (alert.NextSample!.Reason, UntilNext(alert)).ShouldBe((NextSampleReason.LimitCrossed, TimeSpan.FromDays(14)));

        // Later ones have confirmed it; from then on the risk says when.
        var standing = Assess(
            Monthly(Measurands.Iron, 24, i => i == 0 ? 19 : 22 + 0.9 * At(i)),
            Upper(Measurands.Iron, 20, 90)
        );
        standing.Worst.ShouldBe(Severity.Alert);
        UntilNext(standing).ShouldBeGreaterThan(TimeSpan.FromDays(14));

        // The latest bottle is of another oil.
        var wrong = Enumerable
            .Range(0, 20)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.Viscosity40, new Reading(i == 19 ? 100 : 46 + 0.1 * At(i))),
                    (Measurands.Zinc, new Reading(i == 19 ? 400 : 3 + 0.3 * At(i))),
                    (Measurands.WaterContent, new Reading(60 + 3 * At(i)))
                )
            );
        var suspect = Assess(wrong, Upper(Measurands.WaterContent, 200, 500));
        suspect.Recommendations.ShouldHaveSingleItem().Action.ShouldBe(RecommendedAction.SampleAgain);
        (suspect.NextSample!.Reason, UntilNext(suspect)).ShouldBe(
            (NextSampleReason.SampleInDoubt, TimeSpan.FromDays(14))
        );
        Sentences.English.Of(suspect.NextSample).ShouldContain("the latest sample is in doubt");
    }

    [Fact]
    public void No_other_sample_is_asked_for_where_there_is_none()
    {
        var never = ConditionAssessor.Assess(
            Invented.History([]),
            new LimitSet("invented", [Upper(Measurands.Iron, 20, 40)]),
            new AssessmentOptions(Invented.Start)
        );
        Sentences.English.Of(never.Recommendations.ShouldHaveSingleItem()).ShouldBe("Take a sample.");

        var overdue = Assess(
            Monthly(Measurands.Iron, 12, i => 8 + At(i)),
            Upper(Measurands.Iron, 100, 200),
            daysLater: 400
        );
        Sentences.German.Of(overdue.Recommendations.ShouldHaveSingleItem()).ShouldBe("Eine Probe nehmen.");
    }

    [Fact]
    public void Trends_that_go_on_over_a_change_are_not_said_to_start_anew()
    {
        // Thinner oil was topped up: viscosity and acid number change, and neither is better.
        var limits = new LimitSet(
            "invented",
            [
                Upper(Measurands.AcidNumber, 0.4, 0.5),
                new Limit(
                    Measurands.Viscosity40,
                    LimitKind.Absolute,
                    new LimitBand(51, 53),
                    new LimitBand(38, 36),
                    Source.UserData("invented")
                ),
            ]
        );
        var history = Invented.History(
            Enumerable
                .Range(0, 24)
                .Select(i =>
                    Invented.Sample(
                        i,
                        30 * i,
                        (Measurands.AcidNumber, new Reading((i < 15 ? 0.1 : 0.2) + 0.004 * At(i))),
                        (Measurands.Viscosity40, new Reading((i < 15 ? 46 : 42) + 0.2 * At(i)))
                    )
                )
        );
        var assessment = ConditionAssessor.Assess(
            history,
            limits,
            new AssessmentOptions(history.Samples[^1].TakenAt.AddDays(3))
        );

        var finding = assessment.Findings.OfType<UnrecordedChangeFinding>().ShouldHaveSingleItem();
        assessment.States.ShouldAllBe(state => state.Trend.Judged.Points.Count == 24);
        Sentences.English.Of(finding).ShouldEndWith("or a large top-up? No trend starts anew after it.");
        Sentences.German.Of(finding).ShouldEndWith("Kein Trend beginnt danach neu.");
    }

    [Fact]
    public void What_moves_towards_a_limit_does_not_improve()
    {
        var both = new Limit(
            Measurands.OilTemperature,
            LimitKind.Absolute,
            new LimitBand(70, 80),
            new LimitBand(25, 15),
            Source.UserData("invented")
        );
        var assessment = Assess(Monthly(Measurands.OilTemperature, 15, i => 50 - 2 * i + 0.5 * At(i)), both);

        assessment.Worst.ShouldBe(Severity.Alert);
        State(assessment).ShouldContain("alert; falling, ");
        State(assessment).ShouldNotContain("improving");
        State(
                Assess(
                    Monthly(Measurands.OilTemperature, 15, i => 50 - 2 * i + 0.5 * At(i)),
                    Upper(Measurands.OilTemperature, 70, 80)
                )
            )
            .ShouldContain("falling, improving, ");
    }

    [Fact]
    public void An_alert_that_the_dead_band_holds_is_not_said_to_be_beyond()
    {
        var assessment = Assess(
            Monthly(Measurands.WaterContent, 20, i => i == 19 ? 195 : 206 + 2 * At(i)),
            Upper(Measurands.WaterContent, 200, 500, deadBand: 15)
        );
        var problem = assessment.Problems.ShouldHaveSingleItem();

        problem.Statement.ShouldContain("by less than the dead band (alert since 2025-01-06)");
        Sentences.English.Basis(problem).ShouldBe("alert since 2025-01-06");
        Sentences.German.Of(problem).ShouldContain("(Warnung seit 06.01.2025)");
    }

    [Fact]
    public void Where_no_limit_can_judge_a_reading_nothing_is_called_normal()
    {
        var coarse = Assess(
            Monthly(Measurands.Iron, 12, _ => new Reading(50, Qualifier.LessThan)),
            Upper(Measurands.Iron, 20, 40)
        );
        coarse.IsJudged.ShouldBeFalse();
        coarse.ToString().ShouldContain(": not determined");

        var fine = Assess(Monthly(Measurands.Iron, 12, _ => new Reading(5)), Upper(Measurands.Iron, 20, 40));
        fine.IsJudged.ShouldBeTrue();
        fine.ToString().ShouldContain(": normal");
    }

    [Theory]
    [InlineData(1, 1, true)]
    [InlineData(5, 1, true)] // a better laboratory is no movement
    [InlineData(1, 5, true)]
    [InlineData(1, 50, false)] // may be beyond the alarm figure
    public void A_machine_of_which_nothing_is_ever_found_is_sampled_by_routine(
        double first,
        double later,
        bool byRoutine
    )
    {
        var assessment = Assess(
            Monthly(Measurands.Iron, 16, i => new Reading(i < 8 ? first : later, Qualifier.LessThan)),
            Upper(Measurands.Iron, 20, 40)
        );

        UntilNext(assessment).ShouldBe(TimeSpan.FromDays(byRoutine ? 180 : 14));
        assessment.States[0].Lives[0].ShouldBeAssignableTo<RemainingLife>();
        (assessment.States[0].Lives[0] is RemainingLife.NotApproaching).ShouldBe(byRoutine);
    }

    [Fact]
    public void The_first_figure_after_nothing_but_bounds_asks_for_another_sample_soon() =>
        UntilNext(
                Assess(
                    Monthly(Measurands.Iron, 16, i => i < 15 ? new Reading(1, Qualifier.LessThan) : new Reading(9)),
                    Upper(Measurands.Iron, 20, 40)
                )
            )
            .ShouldBe(TimeSpan.FromDays(14));

    [Fact]
    public void Readings_of_another_method_and_those_before_a_change_are_told()
    {
        State(
                Assess(
                    Monthly(
                        Measurands.AcidNumber,
                        20,
                        i => new Reading(0.1 + 0.003 * At(i), method: i < 12 ? "ASTM D664" : "ASTM D974")
                    ),
                    Upper(Measurands.AcidNumber, 0.3, 0.4)
                )
            )
            .ShouldContain("(8 readings, 12 by another method left out)");
        State(
                Assess(
                    Monthly(Measurands.WaterContent, 22, i => (i < 14 ? 120 : 30) + 4 * At(i)),
                    Upper(Measurands.WaterContent, 200, 500)
                )
            )
            .ShouldContain("(8 readings, 14 before it changed to the better on 2026-03-02 set aside)");
    }

    [Fact]
    public void A_machine_that_stood_still_for_a_year_did_not_get_better()
    {
        var samples = Enumerable
            .Range(0, 18)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i + (i < 14 ? 0 : 360),
                    (Measurands.AcidNumber, new Reading(0.1 + 0.009 * i + 0.003 * At(i)))
                )
            );
        var state = Assess(samples, Upper(Measurands.AcidNumber, 0.3, 0.4)).States.ShouldHaveSingleItem();

        state.Trend.Assessment.Changes.ShouldNotContain(one => one.IsToBetter);
        state.Trend.Judged.Points.Count.ShouldBe(18);

        // An oil change in the gap is one all the same.
        var changed = Enumerable
            .Range(0, 18)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i + (i < 14 ? 0 : 360),
                    (Measurands.AcidNumber, new Reading(0.1 + 0.009 * (i < 14 ? i : i - 14) + 0.003 * At(i)))
                )
            );
        Assess(changed, Upper(Measurands.AcidNumber, 0.3, 0.4)).States[0].Trend.Judged.Points.Count.ShouldBe(4);
    }

    [Fact]
    public void A_fall_at_once_gives_no_dates_for_the_upper_limit()
    {
        var both = new Limit(
            Measurands.Viscosity40,
            LimitKind.Absolute,
            new LimitBand(49, 51),
            new LimitBand(43, 40),
            Source.UserData("invented")
        );
        var assessment = Assess(Monthly(Measurands.Viscosity40, 18, i => (i < 14 ? 46 : 42) + 0.15 * At(i)), both);
        var state = assessment.States.ShouldHaveSingleItem();

        SuddenChangeFinding.Of(state)!.Side.ShouldBe(LimitSide.Lower);
        var upper = Sentences.English.Of(state, state.Lives.Single(life => life.Side == LimitSide.Upper));
        upper.ShouldNotContain(" / ");
        upper.ShouldNotContain("no upper bound");
    }
}
