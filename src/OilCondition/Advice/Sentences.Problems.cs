using OilCondition.Cleanliness;
using OilCondition.Text;

namespace OilCondition;

/// <content>The one sentence of a problem, put together from the findings that it consists of.</content>
public sealed partial class Sentences
{
    private static readonly Measurand[] Sizes = [Measurands.Particles4, Measurands.Particles6, Measurands.Particles14];

    /// <summary>A topic in words.</summary>
    /// <param name="topic">The topic.</param>
    /// <returns>For example <c>Oil ageing</c>.</returns>
    public string Of(ProblemTopic topic) => Capital(Topic(topic));

    /// <summary>A topic in words, within a sentence.</summary>
    /// <param name="topic">The topic.</param>
    /// <returns>For example <c>oil ageing</c>.</returns>
    public string Topic(ProblemTopic topic) => Say("topic." + PlainText.Kebab(topic));

    /// <summary>A problem as one sentence.</summary>
    /// <param name="problem">The problem.</param>
    /// <returns>What is wrong, how bad it is, whether it comes back, and when the next limit is likely to be reached.</returns>
    public string Of(Problem problem)
    {
        Guard.NotNull(problem);
        return problem.Topic switch
        {
            ProblemTopic.Cleanup => $"{Capital(Listed(problem.Findings))}.",
            ProblemTopic.Records or ProblemTopic.Sampling => OfTopic(problem, Listed(Gravest(problem))),
            ProblemTopic.Other => $"{Capital(Told(problem))}.",
            _ => OfTopic(problem, Told(problem)),
        };
    }

    /// <summary>The evidence of a problem, a line a measurand, which is named where there are several.</summary>
    /// <param name="problem">The problem.</param>
    /// <returns>For example <c>reading 60 mg/kg; read at 2026-01-01 08:00; limit 40 mg/kg</c>.</returns>
    public IReadOnlyList<string> Evidence(Problem problem)
    {
        var evidence = Guard.NotNull(problem).Evidence;
        return
        [
            .. evidence.Select(part =>
                (evidence.Count > 1 ? $"{Name(part.Key)}: " : "") + string.Join("; ", part.Select(Of))
            ),
        ];
    }

    /// <summary>What a problem rests on, as a phrase: how often it was seen, or how likely it is.</summary>
    /// <param name="problem">The problem.</param>
    /// <returns>For example <c>beyond its limit since 2026-04-23</c>, by its gravest finding.</returns>
    public string Basis(Problem problem) =>
        Guard.NotNull(problem).Findings[0] switch
        {
            LimitFinding { Code: FindingCode.LimitNotConfirmed } or SuddenChangeFinding { IsUnconfirmed: true } => Say(
                "basis.unconfirmed"
            ),
            SuddenChangeFinding change => Say("basis.change", ("count", Number(change.Readings))),
            LimitFinding { Evaluation.Since: { } since } limit when since < limit.Point.At => Say(
                limit.Evaluation.Rate is not null || IsBeyond(limit) ? "basis.since" : "basis.since-state",
                ("state", Of(limit.Evaluation.State)),
                ("date", Date(since))
            ),
            LimitFinding => Say("basis.latest"),
            FreeWaterFinding free => Say(
                "basis.free",
                ("lowest", Free(free.Balance).Free.Lowest),
                ("highest", $"{Free(free.Balance).Free.Highest} {Shown(0, Measurands.WaterContent.Unit).Unit}")
            ),
            RemainingLifeFinding life => Say(
                "basis.life",
                ("chance", Number(100 * life.ChanceWithinHorizon, 1)),
                ("date", Date(life.Horizon))
            ),
            ReturnFinding back => Say("basis.return", ("count", Number(back.State.Trend.Assessment.Used.Count))),
            _ => Say("basis.record"),
        };

    private string OfTopic(Problem problem, string told) =>
        Say("problem.of-topic", ("topic", Of(problem.Topic)), ("told", told));

    /// <summary>What asks for nothing need not stand beside what does.</summary>
    private static List<Finding> Gravest(Problem problem) =>
        [.. problem.Findings.Where(finding => finding.Severity == problem.Severity)];

    /// <summary>Facts that stand beside each other: the first two in full.</summary>
    private string Listed(IReadOnlyList<Finding> findings) =>
        string.Join("; ", findings.Take(2).Select(finding => Small(Of(finding).TrimEnd('.'))))
        + (findings.Count > 2 ? Say("word.more", ("count", Number(findings.Count - 2))) : "");

    private string Told(Problem problem)
    {
        var parts = problem.Findings.GroupBy(finding => finding.Measurand).ToList();
        var lead = parts[0];
        var others = parts.Skip(1).ToList();
        var level = Code(problem.Findings);
        if (level is null)
        {
            level = string.Join(
                ", ",
                [Reading(lead), .. lead.OrderBy(one => one is FreeWaterFinding).Select(Level).OfType<string>()]
            );
        }
        else
        {
            others.RemoveAll(part => Sizes.Contains(part.Key));
        }

        var also = others.Select(Beside).OfType<string>().ToList();
        var lives = problem.Findings.OfType<RemainingLifeFinding>().OrderBy(life => life.Earliest).ToList();
        string?[] clauses =
        [
            level,
            also.Count == 0 ? null : Say("problem.also", ("others", string.Join(", ", also))),
            .. problem.Findings.OfType<ReturnFinding>().Select(one => ComingBack(one, parts.Count > 1)),
            lives.Count == 0 ? null : Ahead(lives[0], parts.Count > 1),
            lives.Count < 2
                ? null
                : Say("problem.same-for", ("others", string.Join(Say("problem.for"), lives.Skip(1).Select(Later)))),
        ];
        return string.Join("; ", clauses.OfType<string>());
    }

    /// <summary>The cleanliness code against the limits, where it says all: the counts of one sample are beyond alert, or beyond alarm, at all three sizes.</summary>
    private string? Code(IReadOnlyList<Finding> findings)
    {
        var counted = findings.Where(one => Sizes.Contains(one.Measurand) && Level(one) is not null).ToList();
        var sizes = counted
            .OfType<LimitFinding>()
            .Where(one =>
                one.Code == FindingCode.LimitPassed
                && IsBeyond(one)
                && one.Point.Reading.Qualifier == Qualifier.None
                && one.Point.At == PointOf(counted[0]).At
                && one.Severity == findings[0].Severity
                && EndsScaleNumber(one.Evaluation.Figure!.Value)
            )
            .OrderBy(one => Array.IndexOf(Sizes, one.Measurand))
            .ToList();
        if (sizes.Count < Sizes.Length || counted.Count > sizes.Count)
        {
            return null;
        }

        string Of(Func<LimitFinding, double> count) =>
            string.Join("/", sizes.Select(one => Iso4406.ScaleNumber(count(one))));
        return Say(
            "problem.code",
            ("code", Of(one => one.Point.Reading.Value)),
            ("date", Date(sizes[0].Point.At)),
            ("word", WordOf(sizes[0])),
            ("limits", Of(one => one.Evaluation.Figure!.Value))
        );
    }

    /// <summary>Within a scale number a count and the limit that it passed would have the same one.</summary>
    private static bool EndsScaleNumber(double count)
    {
        var number = Iso4406.ScaleNumber(count);
        return number <= Iso4406.HighestScaleNumber && Iso4406.UpperLimitPerMillilitre(number) == count;
    }

    private string Reading(IEnumerable<Finding> part)
    {
        var point = part.Select(PointOf).First();
        var measurand = part.First().Measurand;
        return Say(
            "problem.reading",
            ("measurand", Name(measurand)),
            ("quantity", Quantity(point.Reading, measurand)),
            ("date", Date(point.At))
        );
    }

    private static SeriesPoint PointOf(Finding finding) =>
        finding switch
        {
            LimitFinding limit => limit.Point,
            FreeWaterFinding free => free.Balance.Point,
            RemainingLifeFinding life => life.State.Latest!,
            ReturnFinding back => back.State.Latest!,
            var change => ((SuddenChangeFinding)change).State.Latest!,
        };

    /// <summary>How bad it is now; null for what is told of the past or the time to come.</summary>
    private string? Level(Finding finding) =>
        finding switch
        {
            LimitFinding { Evaluation.Rate: { } rate } limit => Say(
                "problem.rate",
                ("rate", Rate(limit, rate)),
                ("word", WordOf(limit)),
                ("limit", RateFigure(limit)),
                ("waits", Waits(limit))
            ),
            LimitFinding limit => Say(
                "problem.against",
                ("against", Against(limit)),
                ("waits", Waits(limit)),
                ("since", Since(limit))
            ),
            FreeWaterFinding free => FreeOfIt(free.Balance),
            SuddenChangeFinding { IsUnconfirmed: true } change => Say(
                "problem.to-be-confirmed",
                ("step", Step(change))
            ),
            SuddenChangeFinding change => Step(change),
            _ => null,
        };

    /// <summary>The same in brief, for a measurand beside the gravest one; null where nothing of it is beyond a limit or has changed.</summary>
    private string? Beside(IGrouping<Measurand, Finding> part)
    {
        var measurand = part.Key;
        return part.FirstOrDefault(one => Level(one) is not null) switch
        {
            null => null,
            LimitFinding { Evaluation.Rate: null } limit => Named(
                limit,
                Say(
                    IsBeyond(limit) ? "problem.beside-limit" : "problem.beside-limit-back",
                    ("word", WordOf(limit)),
                    ("limit", Figure(limit.Evaluation.Figure!.Value, measurand)),
                    ("waits", Waits(limit))
                )
            ),
            var other => Named(other, Level(other)!),
        };

        string Named(Finding finding, string told)
        {
            var reading = PointOf(finding).Reading;
            // Of a count its scale number stands in the same brackets.
            return CodeOf(reading, measurand) is { } code
                ? Say(
                    "problem.beside-code",
                    ("measurand", Name(measurand)),
                    ("quantity", WithoutCode(reading, measurand)),
                    ("code", code),
                    ("told", told)
                )
                : Say("problem.beside", ("named", $"{Name(measurand)} {Quantity(reading, measurand)}"), ("told", told));
        }
    }

    private string Since(LimitFinding finding) =>
        finding.Evaluation.Since is { } since && PlainText.Date(since) != PlainText.Date(finding.Point.At)
            // What has come back inside is still told as an alert, and no longer as beyond.
            ? Say(
                IsBeyond(finding) ? "problem.since" : "problem.since-state",
                ("state", Of(finding.Evaluation.State)),
                ("date", Date(since))
            )
            : "";

    private string Waits(LimitFinding finding) =>
        finding.Code == FindingCode.LimitNotConfirmed ? Say("problem.waits") : "";

    private string FreeOfIt(WaterInOil.Split balance)
    {
        var (state, free) = Free(balance);
        return Say(
            balance.Running.HasFreeWater ? "problem.free-running" : "problem.free-standstill",
            ("free", free.Middle),
            ("lowest", free.Lowest),
            ("highest", free.Highest),
            ("temperature", Degrees(state)),
            ("extrapolated", state.Saturation.IsExtrapolated ? Say("problem.extrapolated") : "")
        );
    }

    private string ComingBack(ReturnFinding finding, bool named) =>
        Say(
            "problem.coming-back",
            ("named", named ? $"{Name(finding.Measurand)} " : ""),
            ("date", Date(finding.Run.EndedAt!.Value)),
            ("target", Quantity(finding.Run.Target, finding.Measurand))
        );

    private string Ahead(RemainingLifeFinding finding, bool named)
    {
        var crossing = finding.Life.Crossing;
        var direction = finding.Life.Side == LimitSide.Upper ? "problem.rising" : "problem.falling";
        var pace = Say(
            direction + (finding.FollowsTreatment ? "-since" : ""),
            ("named", named ? $"{Name(finding.Measurand)} " : ""),
            ("pace", Pace(finding.State.Trend, finding.Life))
        );
        var word = Say(finding.State.RunsToAlarm(finding.Life) ? "word.alarm" : "word.alert");
        var limit = Quantity(finding.Life.Limit, finding.Measurand);
        if (finding.Life.Crossing.IsLikelyPassed)
        {
            return Say(
                "problem.passed-unseen",
                ("pace", pace),
                ("word", word),
                ("limit", limit),
                ("chance", Unseen(finding.Life))
            );
        }

        return crossing.TryAt(0.5, out var middle)
            ? Say(
                "problem.ahead",
                ("pace", pace),
                ("word", word),
                ("limit", limit),
                ("middle", Date(middle)),
                ("early", Date(finding.Earliest))
            )
            : Say(
                "problem.ahead-open",
                ("pace", pace),
                ("word", word),
                ("limit", limit),
                ("early", Date(finding.Earliest))
            );
    }

    private string Later(RemainingLifeFinding finding) =>
        Say("problem.later", ("measurand", Name(finding.Measurand)), ("date", Date(finding.Earliest)));
}
