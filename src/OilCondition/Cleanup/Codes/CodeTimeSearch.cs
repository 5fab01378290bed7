using OilCondition.Cleanliness;

namespace OilCondition.Cleanup;

/// <summary>Joins the times of the sizes of a code to that of the whole.</summary>
internal sealed class CodeTimeSearch
{
    private readonly IReadOnlyDictionary<CodeSize, double> limits;
    private readonly IReadOnlyDictionary<CodeSize, CleanupCurve> curves;
    private readonly Dictionary<CodeSize, Arrival<DateTimeOffset>> sizes;
    private readonly double confidence;

    public CodeTimeSearch(
        IReadOnlyDictionary<CodeSize, double> limits,
        IReadOnlyDictionary<CodeSize, CleanupCurve> curves,
        double confidence
    )
    {
        this.limits = limits;
        this.curves = curves;
        this.confidence = confidence;
        sizes = limits.ToDictionary(pair => pair.Key, pair => curves[pair.Key].TimeTo(pair.Value, confidence));

        // The worst kind of case rules, among equals the one that the best curves reach last, among those the smallest size.
        RulingSize = sizes
            .OrderByDescending(pair => Rank(pair.Value))
            .ThenByDescending(pair => Estimate(pair.Value))
            .ThenBy(pair => pair.Key)
            .First()
            .Key;
    }

    public CodeSize RulingSize { get; }

    public Arrival<DateTimeOffset> Whole()
    {
        var ruling = sizes[RulingSize];
        if (sizes.Count == 1 || Rank(ruling) > 2)
        {
            return ruling;
        }

        var coverageInDoubt = sizes.Values.Any(one => one.CoverageInDoubt);
        if (ruling is Arrival<DateTimeOffset>.Already reached)
        {
            return new Arrival<DateTimeOffset>.Already(
                reached.At,
                sizes.Values.All(one => one is Arrival<DateTimeOffset>.Already { IsDemonstrated: true }),
                confidence,
                coverageInDoubt
            );
        }

        return ruling is Arrival<DateTimeOffset>.Expected && Latest() is { } latest
            ? new Arrival<DateTimeOffset>.Expected(
                Earliest(),
                sizes.Values.Max(Estimate),
                latest,
                confidence,
                coverageInDoubt
            )
            : new Arrival<DateTimeOffset>.NotBefore(Earliest(), confidence, coverageInDoubt);
    }

    // The size that is truly last is late for its own end as seldom as stated. A size that has passed its limit has an end as well.
    private DateTimeOffset? Latest()
    {
        DateTimeOffset?[] ends = [.. limits.Select(pair => curves[pair.Key].Latest(pair.Value, confidence))];
        return ends.Contains(null) ? null : ends.Max();
    }

    // Any of the sizes may be too late for its early end: each gets its share of the uncertainty.
    private DateTimeOffset Earliest()
    {
        var share = (1 - confidence) / 2 / limits.Count;
        return limits.Max(pair => curves[pair.Key].Earliest(pair.Value, 1 - share) ?? curves[pair.Key].Origin);
    }

    private static int Rank(Arrival<DateTimeOffset> one) =>
        one switch
        {
            Arrival<DateTimeOffset>.Never => 4,
            Arrival<DateTimeOffset>.NotDetermined => 3,
            Arrival<DateTimeOffset>.NotBefore => 2,
            Arrival<DateTimeOffset>.Expected => 1,
            _ => 0,
        };

    private static DateTimeOffset Estimate(Arrival<DateTimeOffset> one) =>
        one.TryEstimate(out var estimate) ? estimate
        : one is Arrival<DateTimeOffset>.NotBefore open ? open.Earliest
        : DateTimeOffset.MinValue;
}
