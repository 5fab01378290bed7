using OilCondition.Cleanliness;
using OilCondition.Text;

namespace OilCondition;

/// <content>The one sentence of a problem, put together from the findings that it consists of.</content>
public static partial class Sentences
{
    private static readonly Measurand[] Sizes = [Measurands.Particles4, Measurands.Particles6, Measurands.Particles14];

    /// <summary>A topic in words.</summary>
    /// <param name="topic">The topic.</param>
    /// <returns>For example <c>Oil ageing</c>.</returns>
    public static string Of(ProblemTopic topic) => Capital(PlainText.Spaced(topic));

    /// <summary>A problem as one sentence.</summary>
    /// <param name="problem">The problem.</param>
    /// <returns>What is wrong, how bad it is, whether it comes back, and when the next limit is likely to be reached.</returns>
    public static string Of(Problem problem)
    {
        Guard.NotNull(problem);
        return problem.Topic switch
        {
            ProblemTopic.Cleanup => $"{Capital(Listed(problem.Findings))}.",
            ProblemTopic.Records or ProblemTopic.Sampling => $"{Of(problem.Topic)}: {Listed(Gravest(problem))}.",
            ProblemTopic.Other => $"{Capital(Told(problem))}.",
            var topic => $"{Of(topic)}: {Told(problem)}.",
        };
    }

    /// <summary>The evidence of a problem, a line a measurand, which is named where there are several.</summary>
    /// <param name="problem">The problem.</param>
    /// <returns>For example <c>reading 60 mg/kg; read at 2026-01-01 08:00; limit 40 mg/kg</c>.</returns>
    public static IReadOnlyList<string> Evidence(Problem problem)
    {
        var evidence = Guard.NotNull(problem).Evidence;
        return [.. evidence.Select(part => (evidence.Count > 1 ? $"{part.Key.Name}: " : "") + string.Join("; ", part))];
    }

    /// <summary>What a problem rests on, as a phrase: how often it was seen, or how likely it is.</summary>
    /// <param name="problem">The problem.</param>
    /// <returns>For example <c>beyond its limit since 2026-04-23</c>, by its gravest finding.</returns>
    public static string Basis(Problem problem) =>
        Guard.NotNull(problem).Findings[0] switch
        {
            LimitFinding { Code: FindingCode.LimitNotConfirmed } or SuddenChangeFinding { IsUnconfirmed: true } =>
                "one sample, to be confirmed",
            SuddenChangeFinding change => $"{change.Readings} readings since the change",
            LimitFinding { Evaluation.Since: { } since } limit when since < limit.Point.At =>
                $"beyond its limit since {PlainText.Date(since)}",
            LimitFinding => "by the latest sample alone",
            FreeWaterFinding free => FreeRange(free.Balance),
            RemainingLifeFinding life =>
                $"{PlainText.Number(100 * life.ChanceWithinHorizon, 1)} % by {PlainText.Date(life.Horizon)}",
            ReturnFinding back => $"{back.State.Trend.Assessment.Used.Count} readings since the treatment",
            _ => "as recorded",
        };

    /// <summary>The topics that ask for something, in words.</summary>
    internal static string Topics(Recommendation recommendation) =>
        Capital(
            string.Join(
                ", ",
                recommendation
                    .Problems.Select(problem => PlainText.Spaced(problem.Topic))
                    .Distinct(StringComparer.Ordinal)
            )
        );

    /// <summary>What asks for nothing need not stand beside what does.</summary>
    private static List<Finding> Gravest(Problem problem) =>
        [.. problem.Findings.Where(finding => finding.Severity == problem.Severity)];

    /// <summary>Facts that stand beside each other: the first two in full.</summary>
    private static string Listed(IReadOnlyList<Finding> findings) =>
        string.Join("; ", findings.Take(2).Select(finding => Small(Of(finding).TrimEnd('.'))))
        + (findings.Count > 2 ? $"; and {findings.Count - 2} more" : "");

    private static string Told(Problem problem)
    {
        var parts = problem.Findings.GroupBy(finding => finding.Measurand).ToList();
        var lead = parts[0];
        var others = parts.Skip(1).ToList();
        var level = CodeOf(problem.Findings);
        if (level is null)
        {
            level = string.Join(
                ", ",
                [ReadingOf(lead), .. lead.OrderBy(one => one is FreeWaterFinding).Select(Level).OfType<string>()]
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
            also.Count == 0 ? null : $"also {string.Join(", ", also)}",
            .. problem.Findings.OfType<ReturnFinding>().Select(one => ComingBack(one, parts.Count > 1)),
            lives.Count == 0 ? null : Ahead(lives[0], parts.Count > 1),
            lives.Count < 2 ? null : $"the same for {string.Join(", for ", lives.Skip(1).Select(Later))}",
        ];
        return string.Join("; ", clauses.OfType<string>());
    }

    /// <summary>The cleanliness code against the limits, where it says all: the counts of one sample are beyond alert, or beyond alarm, at all three sizes.</summary>
    private static string? CodeOf(IReadOnlyList<Finding> findings)
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

        string Code(Func<LimitFinding, double> count) =>
            string.Join("/", sizes.Select(one => Iso4406.ScaleNumber(count(one))));
        return $"ISO 4406 code {Code(one => one.Point.Reading.Value)} on {PlainText.Date(sizes[0].Point.At)}, "
            + $"above the {PlainText.Kebab(sizes[0].Severity)} limits {Code(one => one.Evaluation.Figure!.Value)} at all three sizes";
    }

    /// <summary>Within a scale number a count and the limit that it passed would have the same one.</summary>
    private static bool EndsScaleNumber(double count)
    {
        var number = Iso4406.ScaleNumber(count);
        return number <= Iso4406.HighestScaleNumber && Iso4406.UpperLimitPerMillilitre(number) == count;
    }

    private static string ReadingOf(IEnumerable<Finding> part)
    {
        var point = part.Select(PointOf).First();
        return $"{part.First().Measurand.Name} {Quantity(point.Reading, part.First().Measurand)} on {PlainText.Date(point.At)}";
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
    private static string? Level(Finding finding) =>
        finding switch
        {
            LimitFinding { Evaluation.Rate: { } rate } limit =>
                $"changed at {PlainText.Number(rate)} {limit.RateUnit}, where the {WordOf(limit)} limit is {PlainText.Reported(limit.Evaluation.Figure!.Value)}{Waits(limit)}",
            LimitFinding limit => $"{Against(limit)}{Waits(limit)}{Since(limit)}",
            FreeWaterFinding free => Free(free.Balance),
            SuddenChangeFinding change => Step(change)
                + (change.IsUnconfirmed ? ", to be confirmed by another sample" : ""),
            _ => null,
        };

    /// <summary>The same in brief, for a measurand beside the gravest one; null where nothing of it is beyond a limit or has changed.</summary>
    private static string? Beside(IGrouping<Measurand, Finding> part)
    {
        var measurand = part.Key;
        return part.FirstOrDefault(one => Level(one) is not null) switch
        {
            null => null,
            LimitFinding { Evaluation.Rate: null } limit => Named(limit)
                + $"{WordOf(limit)} limit {PlainText.Reported(limit.Evaluation.Figure!.Value)}{Waits(limit)}"
                + (IsBeyond(limit) ? ")" : ", back inside by less than the dead band)"),
            var other => $"{Named(other)}{Level(other)})",
        };

        string Named(Finding finding)
        {
            // Of a count its scale number stands in the same brackets.
            var quantity = Quantity(PointOf(finding).Reading, measurand);
            return $"{measurand.Name} "
                + (quantity[quantity.Length - 1] == ')' ? $"{quantity.TrimEnd(')')}; " : $"{quantity} (");
        }
    }

    private static string Since(LimitFinding finding) =>
        finding.Evaluation.Since is { } since && PlainText.Date(since) != PlainText.Date(finding.Point.At)
            ? $" (beyond since {PlainText.Date(since)})"
            : "";

    private static string Waits(LimitFinding finding) =>
        finding.Code == FindingCode.LimitNotConfirmed ? ", not yet confirmed by a second sample" : "";

    private static string Free(WaterInOil.Split balance)
    {
        var running = balance.Running.HasFreeWater;
        var state = running ? balance.Running : balance.Standstill;
        var open = balance.UncertaintyOfFree(state);
        var free = state.Free.PartsPerMillion;
        string Of(double content) => PlainText.Number(Math.Max(0, content), open);
        return $"about {Of(free)} mg/kg ({Of(free - open)} to {Of(free + open)}) of it free "
            + $"{(running ? "at running temperature" : "after standstill")} ({Degrees(state)}{(state.Saturation.IsExtrapolated ? ", curve extrapolated" : "")})";
    }

    private static string FreeRange(WaterInOil.Split balance)
    {
        var state = balance.Running.HasFreeWater ? balance.Running : balance.Standstill;
        var (open, free) = (balance.UncertaintyOfFree(state), state.Free.PartsPerMillion);
        return $"{PlainText.Number(Math.Max(0, free - open), open)} to {PlainText.Number(free + open, open)} mg/kg free";
    }

    private static string ComingBack(ReturnFinding finding, bool named) =>
        $"{(named ? $"{finding.Measurand.Name} " : "")}coming back since the treatment that ended on {PlainText.Date(finding.Run.EndedAt!.Value)} "
        + $"(target {Quantity(new Reading(finding.Run.Target), finding.Measurand)})";

    private static string Ahead(RemainingLifeFinding finding, bool named)
    {
        var crossing = finding.Life.Crossing;
        var limit =
            $"the {(finding.State.RunsToAlarm(finding.Life) ? "alarm" : "alert")} limit of {Quantity(new Reading(finding.Life.Limit), finding.Measurand)}";
        var direction = finding.Life.Side == LimitSide.Upper ? "rising" : "falling";
        var pace =
            $"{(named ? $"{finding.Measurand.Name} " : "")}{direction}{(finding.FollowsTreatment ? " since the treatment" : "")}, {TrendPace.Words(finding.State.Trend)}";
        return crossing.TryAt(0.5, out var middle)
            ? $"{pace}, expected to reach {limit} around {PlainText.Date(middle)}, one chance in ten before {PlainText.Date(finding.Earliest)}"
            : $"{pace}, one chance in ten to reach {limit} before {PlainText.Date(finding.Earliest)}";
    }

    private static string Later(RemainingLifeFinding finding) =>
        $"{finding.Measurand.Name} before {PlainText.Date(finding.Earliest)}";

    private static string Small(string text) =>
        text.Length > 1 && char.IsLower(text[1]) ? char.ToLowerInvariant(text[0]) + text.Substring(1) : text;
}
