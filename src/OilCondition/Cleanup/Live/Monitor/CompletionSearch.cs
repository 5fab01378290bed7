using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Joins curve, scatter and hold of each part to the completion of the whole.</summary>
internal static class CompletionSearch
{
    public static CleanupCompletion Of(CleanupStatus status, IReadOnlyList<RunPart> parts)
    {
        List<CleanupCompletion> found = [.. parts.Select(part => Of(status, part, parts.Count))];
        var ruling = found
            .OrderByDescending(one => one.Outcome)
            .ThenByDescending(one => one.HasEstimate ? one.Estimate : one.Earliest)
            .ThenBy(one => one.RulingPart)
            .First();
        var isAhead = ruling.Outcome is CompletionOutcome.Expected or CompletionOutcome.NotDemonstrated;
        return new CleanupCompletion(
            ruling.Outcome,
            ruling.RulingPart,
            status.Confidence,
            found.Any(one => one.CoverageInDoubt),
            status.AsOf,
            isAhead || ruling.HasEarliest ? Last(one => one.HasEarliest, one => one.Earliest) : null,
            ruling.HasEstimate ? Last(one => one.HasEstimate, one => one.Estimate) : null,
            ruling.HasLatest ? Last(one => one.HasLatest, one => one.Latest) : null,
            found
        );

        DateTimeOffset? Last(Func<CleanupCompletion, bool> has, Func<CleanupCompletion, DateTimeOffset> at) =>
            found.Where(has).Select(one => (DateTimeOffset?)at(one)).Max();
    }

    private static CleanupCompletion Of(CleanupStatus status, RunPart part, int shares)
    {
        var (curve, hold, options) = (part.Curve, part.Hold, status.Options);
        var gap = part.UsualGapHours;
        if (hold.IsMet)
        {
            return Case(CompletionOutcome.Met, hold.MetAt, hold.MetAt, hold.MetAt);
        }

        if (part.Part == CleanupPart.Water && !status.IsWarm && status.HasTemperature)
        {
            return Case(CompletionOutcome.TooCold);
        }

        if (gap > options.LongestGap.TotalHours)
        {
            return Case(CompletionOutcome.ReadingsTooFarApart);
        }

        var isHolding = hold.Since.HasValue;
        var soonest = hold.Since ?? status.AsOf;
        if (!curve.HasCurve)
        {
            return isHolding ? Case(CompletionOutcome.NotDemonstrated, soonest.AddHours(options.HoldFor.TotalHours))
                : part.Part == CleanupPart.Water && status.HasFreeWater ? Case(CompletionOutcome.FreeWaterLeaving)
                : Case(CompletionOutcome.TooFewReadings);
        }

        if (!isHolding && part.Stall != CleanupStall.None)
        {
            return Case(CompletionOutcome.NeverArrives);
        }

        var doubt = (1 - status.Confidence) / 2;
        var earliest = curve.TimeTo(part.Target, 1 - doubt / shares, IntervalSide.Lower) switch
        {
            TimeToTarget.NotBefore it => it.Earliest,
            TimeToTarget.OutOfReach => DateTimeOffset.MaxValue,
            _ => curve.Origin,
        };
        if (earliest == DateTimeOffset.MaxValue && !isHolding)
        {
            return Case(CompletionOutcome.NeverArrives);
        }

        DateTimeOffset? crossing = curve.TimeTo(part.Target, status.Confidence) switch
        {
            TimeToTarget.Expected it => it.Estimate,
            TimeToTarget.Reached it => it.At,
            _ => null,
        };
        var late = curve.TryLatest(part.Target, status.Confidence, IntervalSide.Both, out var end)
            ? end
            : default(DateTimeOffset?);
        if (crossing is not { } cross || earliest == DateTimeOffset.MaxValue)
        {
            var bound = earliest == DateTimeOffset.MaxValue ? soonest : Later(earliest, soonest);
            return Case(CompletionOutcome.NotDemonstrated, bound.AddHours(options.HoldFor.TotalHours));
        }

        var from = Later(curve.LastReadingAt, status.AsOf.AddHours(-gap));
        var begin = new HoldBegin(part, from, isHolding, cross, options.HoldFor.TotalHours);
        var centre = Moment(begin.HoursTo(0.5));
        var soon = Moment(begin.HoursTo(doubt / shares));
        var most = Moment(begin.HoursTo(1 - doubt));
        var first = soon is { } early
            ? Back(centre ?? Later(cross, from), early, Later(earliest, from), Later(cross, from))
            : Later(earliest, soonest);
        first = Later(first, soonest);
        if (centre is not { } estimate || most is not { } longest || late is not { } latest)
        {
            return Case(CompletionOutcome.NotDemonstrated, Held(first), centre is { } middle ? Held(middle) : null);
        }

        var last = estimate.AddHours(
            Root((longest - estimate).TotalHours, (Later(latest, from) - Later(cross, from)).TotalHours)
        );
        return Case(CompletionOutcome.Expected, Held(first), Held(Later(estimate, first)), Held(Later(last, first)));

        DateTimeOffset Held(DateTimeOffset begun) => begun.AddHours(options.HoldFor.TotalHours);

        DateTimeOffset? Moment(double? hours) =>
            hours is not { } some ? null
            : some == 0 ? soonest
            : from.AddHours(some);

        CleanupCompletion Case(
            CompletionOutcome outcome,
            DateTimeOffset? earliestEnd = null,
            DateTimeOffset? estimated = null,
            DateTimeOffset? latestEnd = null
        ) =>
            new(
                outcome,
                part.Part,
                status.Confidence,
                curve.CoverageInDoubt,
                status.AsOf,
                earliestEnd,
                estimated,
                latestEnd
            );
    }

    private static DateTimeOffset Back(
        DateTimeOffset centre,
        DateTimeOffset soon,
        DateTimeOffset earliest,
        DateTimeOffset cross
    ) => centre.AddHours(-Root((centre - soon).TotalHours, (cross - earliest).TotalHours));

    private static double Root(double one, double other)
    {
        var (a, b) = (Math.Max(0, one), Math.Max(0, other));
        return Math.Sqrt(a * a + b * b);
    }

    private static DateTimeOffset Later(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;
}
