using CsCheck;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Advice;

/// <summary>Trend, state, life, next sample and recommendation of one measurand, compared with each other on drawn histories.</summary>
public class VerdictTests
{
    [Fact]
    public void Verdicts_of_one_measurand_agree() =>
        Gen.Int[0, int.MaxValue - 1]
            .Holds(
                seed =>
                {
                    var one = new InventedHistories(seed);
                    var assessment = ConditionAssessor.Assess(
                        one.History(),
                        InventedHistories.Limits,
                        new AssessmentOptions(one.End.AddDays(seed % 90))
                    );
                    foreach (var state in assessment.States)
                    {
                        Agrees(state, assessment);
                    }

                    Agrees(assessment);
                },
                iter: 300
            );

    private static void Agrees(MeasurandState state, ConditionAssessment assessment)
    {
        var findings = assessment.Findings.Where(one => one.Measurand.Equals(state.Measurand)).ToList();
        foreach (var life in state.Lives)
        {
            // Three dates, or a finding that it moves, only beside a trend that moves towards that limit.
            var moves =
                state.Trend.Assessment.Verdict
                == (life.Side == LimitSide.Upper ? TrendVerdict.Rising : TrendVerdict.Falling);
            var words = Sentences.Of(state, life);
            if (!moves)
            {
                words.ShouldNotContain(" / ");
                words.ShouldNotContain("no upper bound");
                findings.OfType<RemainingLifeFinding>().ShouldNotContain(one => one.Life == life);
            }

            if (life is RemainingLife.AlreadyCrossed && state.Latest!.SampleNumber.Length > 0)
            {
                (state.Worst.State >= LimitState.Alert || state.Worst.Pending >= LimitState.Alert).ShouldBeTrue();
            }
        }

        if (state.Trend.Assessment.Verdict == TrendVerdict.NoTrend)
        {
            Sentences.Of(state.Trend).ShouldStartWith("no significant trend");
            findings.ShouldNotContain(one => one is RemainingLifeFinding || one is ReturnFinding);
        }

        if (state.Worst.State >= LimitState.Alert)
        {
            // Nobody is left alone with an alarm, and the maintenance system hears of it.
            assessment
                .Recommendations.SelectMany(one => one.Reasons)
                .OfType<LimitFinding>()
                .ShouldContain(one => one.Measurand.Equals(state.Measurand));
            assessment.Alerts.ShouldContain(one => one.Findings.Any(it => it.Measurand.Equals(state.Measurand)));
        }

        findings.OfType<LimitFinding>().Select(one => one.Code).ShouldBeUnique();
    }

    private static void Agrees(ConditionAssessment assessment)
    {
        if (assessment.NextSample is not { } next)
        {
            return;
        }

        var last = assessment.History.Samples.Max(sample => sample.TakenAt);
        var plan = assessment.Options.Sampling;
        next.At.ShouldBeInRange(last + plan.Shortest, last + plan.Longest);
        if (assessment.Worst == Severity.Alarm || assessment.States.Any(state => state.Worst.State == LimitState.Alarm))
        {
            next.At.ShouldBe(last + plan.Shortest);
            next.Reason.ShouldBe(NextSampleReason.LimitCrossed);
        }

        assessment.Recommendations.Count.ShouldBeGreaterThanOrEqualTo(assessment.Alerts.Count > 0 ? 1 : 0);
        assessment
            .ToString()
            .Split('\n')
            .Where(line => line.Trim().Contains(' '))
            .ShouldAllBe(line => line.Length <= 100);
    }
}
