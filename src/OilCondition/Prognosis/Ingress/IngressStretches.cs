namespace OilCondition.Prognosis;

/// <summary>Spans of time in which nobody takes water out of an oil.</summary>
internal static class IngressStretches
{
    public static IEnumerable<(DateTimeOffset From, DateTimeOffset To)> Between(OilHistory history, DateTimeOffset asOf)
    {
        if (!history.TryFirstRecord(out var first) || first > asOf)
        {
            yield break;
        }

        DateTimeOffset? from = first;
        foreach (var one in history.Events.Where(one => one.At <= asOf && Ends(one)))
        {
            if (from is { } begun && one.At > begun)
            {
                yield return (begun, one.At);
            }

            var next = one is TreatmentRun run ? run.EndedAt : one.At;
            from =
                next is { } end && (from is null || end > from) ? end
                : next is null ? null
                : from;
        }

        if (from is { } last && last < asOf)
        {
            yield return (last, asOf);
        }
    }

    /// <summary>Since when a sensor stands at saturation: the last reading, and one of the two before it, only say 'at least'.</summary>
    public static DateTimeOffset? CeilingOf(MeasurandSeries series)
    {
        var last = series.Points.Count - 1;
        bool AtLeast(int index) => index >= 0 && series.Points[index].Reading.Qualifier == Qualifier.GreaterThan;
        if (!AtLeast(last) || !(AtLeast(last - 1) || AtLeast(last - 2)))
        {
            return null;
        }

        var since = last;
        while (AtLeast(since - 1) || AtLeast(since - 2))
        {
            since = AtLeast(since - 1) ? since - 1 : since - 2;
        }

        return series.Points[since].At;
    }

    public static int CountOf(IReadOnlyList<MeasurandSeries> all) =>
        all.Sum(series => series.Points.Count(point => !point.Reading.IsCensored));

    /// <summary>Filters leave the water; all else takes some of it, or the oil.</summary>
    private static bool Ends(OilEvent one) =>
        one is OilChange or TreatmentRun { Kind: not TreatmentKind.FineFiltration };
}
