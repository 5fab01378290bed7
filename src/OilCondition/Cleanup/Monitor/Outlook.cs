namespace OilCondition.Cleanup;

/// <summary>When a run is completed: curve, scatter and hold of each part, joined to the whole.</summary>
internal sealed class Outlook
{
    private Outlook(
        Arrival<DateTimeOffset> arrival,
        CompletionReason reason,
        Measurand rulingPart,
        IReadOnlyList<CleanupPart> parts
    )
    {
        Arrival = arrival;
        Reason = reason;
        RulingPart = rulingPart;
        Parts = parts;
    }

    public Arrival<DateTimeOffset> Arrival { get; }

    public CompletionReason Reason { get; }

    public Measurand RulingPart { get; }

    public IReadOnlyList<CleanupPart> Parts { get; }

    public static Outlook Of(CleanupStatus status, IReadOnlyList<RunPart> runParts)
    {
        List<CleanupPart> parts = [.. runParts.Select(part => Of(status, part, runParts.Count))];

        // The worst kind of answer rules, among equals the one that is last; the parts stand in their order.
        var ruling = parts.OrderByDescending(part => Rank(part)).ThenByDescending(At).First();
        return new Outlook(Whole(ruling, parts, status.Confidence), ruling.Reason, ruling.Measurand, parts);
    }

    /// <summary>An arrival in words, with the reason where there is no date.</summary>
    public static string Words(Arrival<DateTimeOffset> arrival, CompletionReason reason, Measurand part) =>
        reason switch
        {
            CompletionReason.None => arrival.ToString()!,
            CompletionReason.NotYetShown =>
                $"{arrival}; the readings of {part.Name} do not show yet that it gets there",
            CompletionReason.NotOnOneCourse =>
                $"{part.Name} does not follow one fall that could be carried forward; no date yet",
            CompletionReason.TooCold => "the oil is too cold for its readings to count",
            CompletionReason.FreeWater => "there is free water; no date before the dissolved water falls",
            CompletionReason.TooFewReadings => $"too few readings of {part.Name}",
            CompletionReason.ReadingsTooFarApart => $"readings of {part.Name} come too seldom to show that it holds",
            CompletionReason.Stalled when arrival is Arrival<DateTimeOffset>.NotDetermined =>
                "the sensor stands at saturation, and shows no fall; titrate to see how much free water is left",
            _ => $"never as it runs: {part.Name} stays above its target",
        };

    private static Arrival<DateTimeOffset> Whole(
        CleanupPart ruling,
        IReadOnlyList<CleanupPart> parts,
        double confidence
    )
    {
        var coverageInDoubt = parts.Any(part => part.Arrival.CoverageInDoubt);
        DateTimeOffset Last(Func<Arrival<DateTimeOffset>, DateTimeOffset?> end) =>
            parts.Max(part => end(part.Arrival)) ?? default;
        return ruling.Arrival switch
        {
            Arrival<DateTimeOffset>.Already already => already,
            Arrival<DateTimeOffset>.Expected => new Arrival<DateTimeOffset>.Expected(
                Last(Earliest),
                Last(one => one.TryEstimate(out var estimate) ? estimate : null),
                Last(one =>
                    one switch
                    {
                        Arrival<DateTimeOffset>.Expected it => it.Latest,
                        Arrival<DateTimeOffset>.Already it => it.At,
                        _ => null,
                    }
                ),
                confidence,
                coverageInDoubt
            ),
            Arrival<DateTimeOffset>.NotBefore => new Arrival<DateTimeOffset>.NotBefore(
                Last(Earliest),
                confidence,
                coverageInDoubt
            ),
            var none => none,
        };
    }

    private static int Rank(CleanupPart part) =>
        part.Arrival is Arrival<DateTimeOffset>.Already ? -1 : (int)part.Reason;

    private static DateTimeOffset? At(CleanupPart part) => part.Centre ?? Earliest(part.Arrival);

    private static DateTimeOffset? Earliest(Arrival<DateTimeOffset> arrival) =>
        arrival switch
        {
            Arrival<DateTimeOffset>.Already it => it.At,
            Arrival<DateTimeOffset>.Expected it => it.Earliest,
            Arrival<DateTimeOffset>.NotBefore it => it.Earliest,
            _ => null,
        };

    private static CleanupPart Of(CleanupStatus status, RunPart part, int shares)
    {
        var (curve, hold, options) = (part.Curve, part.Hold, status.Options);
        var (confidence, gap) = (status.Confidence, part.UsualGapHours);
        var isFigure = part.Measurand.Equals(options.Measurand);
        if (part.IsMet)
        {
            return new CleanupPart(
                part,
                new Arrival<DateTimeOffset>.Already(hold.MetAt, true, confidence, curve.CoverageInDoubt),
                CompletionReason.None,
                hold.MetAt
            );
        }

        if (isFigure && !status.IsWarm && status.Temperature.HasValue)
        {
            return Open(CompletionReason.TooCold);
        }

        if (gap > options.LongestGap.TotalHours)
        {
            return Open(CompletionReason.ReadingsTooFarApart);
        }

        if (hold.IsMet)
        {
            // It has held for long enough, but its readings do not show yet that it is there.
            var due = Later(hold.MetAt, status.AsOf);
            return new CleanupPart(
                part,
                new Arrival<DateTimeOffset>.NotBefore(due, confidence, curve.CoverageInDoubt),
                CompletionReason.NotYetShown,
                due
            );
        }

        var isHolding = hold.Since.HasValue;
        var soonest = hold.Since ?? status.AsOf;
        if (!isHolding && part.Look.Sign == StallSign.AtSaturation)
        {
            return Open(CompletionReason.Stalled);
        }

        if (!isHolding && part.IsStalled)
        {
            return Never();
        }

        if (!curve.HasCurve)
        {
            return isHolding ? NotBefore(soonest)
                : isFigure && status.HasFreeWater ? Open(CompletionReason.FreeWater)
                : Open(CompletionReason.TooFewReadings);
        }

        var share = (1 - confidence) / 2;
        var reached = curve.Earliest(part.Target, 1 - share / shares);
        if (!isHolding && reached is null)
        {
            return Never();
        }

        if (
            !isHolding
            && curve.Course.IsContradicted
            && curve.TimeTo(part.Target, confidence) is Arrival<DateTimeOffset>.NotDetermined
        )
        {
            return Open(CompletionReason.NotOnOneCourse);
        }

        if (reached is not { } earliest || !curve.TimeTo(part.Target, confidence).TryEstimate(out var cross))
        {
            return NotBefore(reached is { } end ? Later(end, soonest) : soonest);
        }

        var from = Later(curve.LastReadingAt, status.AsOf.AddHours(-gap));
        var begin = new HoldBegin(part, from, isHolding, cross, options.HoldFor.TotalHours);
        var centre = Moment(begin.HoursTo(0.5));
        var soon = Moment(begin.HoursTo(share / shares));
        var most = Moment(begin.HoursTo(1 - share));
        var first = soon is { } early
            ? Back(centre ?? Later(cross, from), early, Later(earliest, from), Later(cross, from))
            : Later(earliest, soonest);
        first = Later(first, soonest);
        var late = curve.Latest(part.Target, confidence);
        if (centre is not { } estimate || most is not { } longest || late is not { } latest)
        {
            return NotBefore(first, centre);
        }

        var last = estimate.AddHours(
            Root((longest - estimate).TotalHours, (Later(latest, from) - Later(cross, from)).TotalHours)
        );
        var expected = new Arrival<DateTimeOffset>.Expected(
            Held(first),
            Held(Later(estimate, first)),
            Held(Later(last, first)),
            confidence,
            curve.CoverageInDoubt
        );
        return new CleanupPart(part, expected, CompletionReason.None, expected.Estimate);

        DateTimeOffset Held(DateTimeOffset begun) => begun.AddHours(options.HoldFor.TotalHours);

        DateTimeOffset? Moment(double? hours) =>
            hours is not { } some ? null
            : some == 0 ? soonest
            : from.AddHours(some);

        CleanupPart Open(CompletionReason reason) =>
            new(part, new Arrival<DateTimeOffset>.NotDetermined(confidence), reason, null);

        CleanupPart Never() =>
            new(
                part,
                new Arrival<DateTimeOffset>.Never(confidence, curve.CoverageInDoubt),
                CompletionReason.Stalled,
                null
            );

        CleanupPart NotBefore(DateTimeOffset begun, DateTimeOffset? middle = null) =>
            new(
                part,
                new Arrival<DateTimeOffset>.NotBefore(Held(begun), confidence, curve.CoverageInDoubt),
                CompletionReason.NotYetShown,
                middle is { } best ? Held(best) : null
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
