using OilCondition.Cleanliness;
using OilCondition.Limits;
using OilCondition.Text;
using Scriban.Runtime;

namespace OilCondition.Reporting;

/// <summary>The decision table: what to do on which machine, by when, and how sure that is.</summary>
internal sealed class FirstPage(ReportTexts texts)
{
    private readonly Sentences say = texts.Sentences;

    public ScriptObject Row(MachineEntry entry)
    {
        var assessment = entry.Assessment;
        return new ScriptObject
        {
            ["state"] = Severity(assessment),
            ["anchor"] = entry.Anchor,
            ["id"] = assessment.History.Machine.Id,
            ["name"] = assessment.History.Machine.Name,
            ["what"] = What(entry).ToList(),
            ["by"] = entry.Due.At is { } by ? say.Date(by) : "",
            ["why"] = entry.Due.Why,
            ["next"] = Next(assessment),
            ["code"] = Code(entry),
            ["sure"] = Sure(entry),
        };
    }

    /// <summary>Severity as class, mark and word: no colour is needed to tell one from another.</summary>
    public ScriptObject Severity(ConditionAssessment assessment) =>
        assessment.Findings.Count == 0
            ? State(assessment.IsJudged ? LimitState.Normal : LimitState.NotDetermined)
            : Severity(assessment.Worst);

    public ScriptObject Severity(Severity severity) =>
        Mark(
            PlainText.Kebab(severity),
            say.Of(severity),
            severity switch
            {
                OilCondition.Severity.Alarm => "■",
                OilCondition.Severity.Alert => "▲",
                _ => "●",
            }
        );

    public ScriptObject State(LimitState state) =>
        state switch
        {
            LimitState.Alarm => Mark("alarm", say.Of(state), "■"),
            LimitState.Alert => Mark("alert", say.Of(state), "▲"),
            LimitState.Normal => Mark("normal", say.Of(state), "○"),
            _ => Mark("open", say.Of(state), "?"),
        };

    private static ScriptObject Mark(string kind, string word, string mark) =>
        new()
        {
            ["kind"] = kind,
            ["mark"] = mark,
            ["word"] = word,
        };

    /// <summary>What is decided, then what else is to be done about it; treatments that the decision stands for are not said twice.</summary>
    private IEnumerable<string> What(MachineEntry entry)
    {
        foreach (var decision in entry.Decisions.OrderBy(one => one.RiskDate))
        {
            yield return decision.Choice is { Assessment: not null } choice && decision.UnderWay is null
                ? texts.Say(
                    "decision.take",
                    ("id", choice.Id),
                    ("name", say.Name(choice)),
                    ("hours", say.Hours(choice.Assessment.Band!))
                )
                : say.Recommendation(decision);
        }

        var decided = entry.Decisions.SelectMany(one => one.Problems).ToList();
        var isUnderWay = entry.Decisions.Any(one => one.UnderWay is not null);
        var others = entry
            .Assessment.Recommendations.Where(one =>
                !IsTreatment(one.Action) || !(isUnderWay || one.Problems.All(problem => decided.Contains(problem)))
            )
            .Select(say.Of)
            .ToList();
        foreach (var other in others)
        {
            yield return other;
        }

        if (entry.Decisions.Count == 0 && others.Count == 0)
        {
            yield return texts["first.no-action"];
        }
    }

    private static bool IsTreatment(RecommendedAction action) =>
        action
            is RecommendedAction.VacuumDehydrate
                or RecommendedAction.FilterInKidneyLoop
                or RecommendedAction.PlanOilChange
                or RecommendedAction.ContinueTreatment;

    public string Next(ConditionAssessment assessment) =>
        assessment.NextSample is not { } next ? ""
        : next.IsOverdue ? texts.Say("next.overdue", ("date", say.Date(next.At)))
        : say.Date(next.At);

    private string Code(MachineEntry entry)
    {
        if (entry.Assessment.Cleanliness is not { } code)
        {
            return texts["code.none"];
        }

        var target =
            entry.Decisions.Select(one => one.Target.Code).FirstOrDefault(one => one is not null)
            ?? AlertCode(entry.Assessment);
        return target is null
            ? texts.Say("code.no-target", ("code", code.ToString()))
            : texts.Say(
                code.Compare(target) switch
                {
                    TargetOutcome.Met or TargetOutcome.MetOnFewCounted => "code.met",
                    TargetOutcome.Exceeded => "code.above",
                    _ => "code.open",
                },
                ("code", code.ToString()),
                ("target", target.ToString())
            );
    }

    /// <summary>The code that the alert limits of the three sizes make; null where one has none.</summary>
    private static CleanlinessCode? AlertCode(ConditionAssessment assessment)
    {
        int? Number(Measurand size) =>
            assessment
                .States.Where(state => state.Measurand.Equals(size))
                .SelectMany(state => state.Limits)
                .Where(one => one.Limit.Kind == LimitKind.Absolute)
                .Select(one => one.Upper?.Alert)
                .FirstOrDefault(alert => alert is not null)
                is { } count
                ? Iso4406.ScaleNumber(count)
                : null;
        return
            Number(Measurands.Particles4) is { } at4
            && Number(Measurands.Particles6) is { } at6
            && Number(Measurands.Particles14) is { } at14
            ? new CleanlinessCode(at4, at6, at14)
            : null;
    }

    /// <summary>How sure the advice is: the chance of the choice, else what the gravest finding rests on.</summary>
    private string Sure(MachineEntry entry)
    {
        string Percent(UnitsNet.Ratio share) => say.Number(share.Percent, 1);
        var choice = entry
            .Decisions.OrderBy(one => one.RiskDate)
            .Select(one => one.Choice)
            .FirstOrDefault(one => one?.Assessment is not null);
        if (choice is not null)
        {
            return texts.Say(
                Percent(choice.Probability) == Percent(choice.ProbabilityInTime)
                    ? "sure.decision"
                    : "sure.decision-in-time",
                ("chance", Percent(choice.Probability)),
                ("inTime", Percent(choice.ProbabilityInTime))
            );
        }

        return entry.Assessment.Problems is [var gravest, ..] ? say.Basis(gravest) : "";
    }
}
