using CsCheck;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;

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

    /// <summary>The same of histories in which one measurand, or two, stand on another level from some sample on, or only in one sample.</summary>
    [Fact]
    public void Verdicts_agree_where_something_changes_at_once()
    {
        var changes = new Dictionary<Severity, int>();
        Gen.Int[0, int.MaxValue - 1]
            .Holds(
                seed =>
                {
                    var random = new Random(seed);
                    var count = random.Next(7, 22);
                    var first = random.Next(5, count);
                    var last = random.Next(0, 3) == 0 ? random.Next(first, count) : count;
                    var (iron, water, acid, thick) = (
                        random.Next(-10, 60),
                        random.Next(0, 2) * random.Next(-40, 300),
                        random.Next(0, 2) * random.Next(-5, 30) / 100.0,
                        random.Next(0, 2) * random.Next(-30, 31) / 10.0
                    );
                    double Scatter(double size) => size * (random.NextDouble() - 0.5);
                    var history = Invented.History(
                        Enumerable
                            .Range(0, count)
                            .Select(i =>
                            {
                                var on = i >= first && i <= last ? 1 : 0;
                                return Invented.Sample(
                                    i,
                                    30 * i + random.Next(0, 9),
                                    (Measurands.Iron, new Reading(Math.Round(20 + iron * on + Scatter(4)))),
                                    (Measurands.WaterContent, new Reading(Math.Round(80 + water * on + Scatter(20)))),
                                    (
                                        Measurands.AcidNumber,
                                        new Reading(Math.Round(0.15 + acid * on + Scatter(0.03), 2))
                                    ),
                                    (Measurands.Viscosity40, new Reading(Math.Round(46 + thick * on + Scatter(0.4), 1)))
                                );
                            })
                    );
                    var assessment = ConditionAssessor.Assess(
                        history,
                        InventedHistories.Limits,
                        new AssessmentOptions(history.Samples[^1].TakenAt.AddDays(random.Next(0, 40)))
                    );
                    foreach (var state in assessment.States)
                    {
                        Agrees(state, assessment);
                    }

                    Agrees(assessment);
                    foreach (var change in assessment.Findings.OfType<SuddenChangeFinding>())
                    {
                        changes[change.Severity] = changes.GetValueOrDefault(change.Severity) + 1;
                    }
                },
                iter: 300
            );

        // The histories hold what is asked about.
        changes[Severity.Information].ShouldBeGreaterThan(20);
        changes[Severity.Alert].ShouldBeGreaterThan(20);
    }

    private static void Agrees(MeasurandState state, ConditionAssessment assessment)
    {
        var findings = assessment.Findings.Where(one => one.Measurand.Equals(state.Measurand)).ToList();
        var change = SuddenChangeFinding.Of(state);
        var isBeyond = state.Worst.State >= LimitState.Alert;
        foreach (var life in state.Lives)
        {
            // Three dates only beside a trend or a sudden change towards that limit, a finding only beside the trend.
            var moves =
                state.Trend.Assessment.Verdict
                == (life.Side == LimitSide.Upper ? TrendVerdict.Rising : TrendVerdict.Falling);
            var words = Sentences.English.Of(state, life);
            if (!moves && change?.Side != life.Side)
            {
                words.ShouldNotContain(" / ");
                words.ShouldNotContain("no upper bound");
            }

            if (isBeyond || change is not null)
            {
                words.ShouldNotContain("no trend towards it");
            }

            if (!moves)
            {
                findings.OfType<RemainingLifeFinding>().ShouldNotContain(one => one.Life == life);
            }

            if (life is RemainingLife.AlreadyCrossed && state.Latest!.SampleNumber.Length > 0)
            {
                (state.Worst.State >= LimitState.Alert || state.Worst.Pending >= LimitState.Alert).ShouldBeTrue();
            }
        }

        if (state.Trend.Assessment.Verdict == TrendVerdict.NoTrend)
        {
            var phrase = Sentences.English.Of(state);
            phrase.StartsWith("no significant trend", StringComparison.Ordinal).ShouldBe(!isBeyond && change is null);
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
        Agrees(state, change, assessment);
    }

    private static void Agrees(MeasurandState state, SuddenChangeFinding? change, ConditionAssessment assessment)
    {
        var told = assessment.Findings.OfType<SuddenChangeFinding>().Where(one => one.State == state).ToList();
        told.Count.ShouldBeLessThanOrEqualTo(1);
        if (change is null)
        {
            told.ShouldBeEmpty();
            return;
        }

        // Told of itself, or of the oil change that it seems to belong to.
        Sentences.English.Of(state).ShouldContain(change.IsUnconfirmed ? "sudden change" : "changed at once");
        (
            told.Count == 1
            || assessment
                .Findings.OfType<UnrecordedChangeFinding>()
                .Any(one => one.HasBetter && one.States.Contains(state) && one.After.At == change.First.At)
        ).ShouldBeTrue();
        if (told.Count == 0)
        {
            return;
        }

        if (assessment.NextSample is { } next)
        {
            next.At.ShouldBe(
                assessment.History.Samples.Max(sample => sample.TakenAt) + assessment.Options.Sampling.Shortest
            );
        }

        (change.IsUnconfirmed && change.Severity > Severity.Information).ShouldBeFalse();
        var asked = assessment.Recommendations.Where(one => one.Reasons.Any(reason => reason == told[0])).ToList();
        asked
            .Exists(one => one.Action == RecommendedAction.SampleAgain)
            .ShouldBe(
                change.Severity == Severity.Information
                    && !assessment.Findings.Any(one =>
                        one.Severity >= Severity.Alert && one.Measurand.Equals(state.Measurand)
                    )
            );
        asked.Exists(one => one.Action != RecommendedAction.SampleAgain).ShouldBe(change.Severity == Severity.Alert);
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
