using OilCondition.Cleanliness;
using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Joins the times of the sizes of a code to that of the whole.</summary>
internal static class CodeTimeSearch
{
    public static CodeTimeToTarget Of(
        CleanlinessCode target,
        IReadOnlyDictionary<CodeSize, double> limits,
        IReadOnlyDictionary<CodeSize, CleanupCurve> curves,
        double confidence,
        IntervalSide side
    )
    {
        var sizes = limits.ToDictionary(
            pair => pair.Key,
            pair => curves[pair.Key].TimeTo(pair.Value, confidence, side)
        );

        // The worst kind of case rules, among equals the one that the best curves reach last, among those the smallest size.
        var ruling = sizes
            .OrderByDescending(pair => Rank(pair.Value))
            .ThenByDescending(pair => Estimate(pair.Value))
            .ThenBy(pair => pair.Key)
            .First();
        return new CodeTimeToTarget(target, sizes, ruling.Key, Whole());

        TimeToTarget Whole()
        {
            if (sizes.Count == 1 || Rank(ruling.Value) > 2)
            {
                return ruling.Value;
            }

            var basis = new TimeToTarget.Basis(
                confidence,
                side,
                sizes.Values.Any(one => one.CoverageInDoubt),
                ruling.Value.ObservedTimeConstants
            );
            return ruling.Value switch
            {
                TimeToTarget.Reached reached => new TimeToTarget.Reached(
                    basis,
                    reached.At,
                    sizes.Values.All(one => one is TimeToTarget.Reached { IsDemonstrated: true })
                ),
                TimeToTarget.NotDemonstrated => new TimeToTarget.NotDemonstrated(basis, Earliest()),
                not TimeToTarget.NotBefore when TryLatest() is not { } => new TimeToTarget.NotDemonstrated(
                    basis,
                    Earliest()
                ),
                TimeToTarget.DoneBy => new TimeToTarget.DoneBy(basis, sizes.Values.Max(Estimate), TryLatest()!.Value),
                TimeToTarget.NotBefore last => new TimeToTarget.NotBefore(
                    basis,
                    Earliest(),
                    sizes.Values.All(one => one is not TimeToTarget.NotBefore { HasEstimate: false }),
                    sizes.Values.Max(Estimate)
                ),
                _ => new TimeToTarget.Expected(basis, Earliest(), sizes.Values.Max(Estimate), TryLatest()!.Value),
            };
        }

        // The size that is truly last is late for its own end as seldom as stated. A size that has passed its limit has an end as well.
        DateTimeOffset? TryLatest()
        {
            DateTimeOffset? latest = DateTimeOffset.MinValue;
            foreach (var pair in limits)
            {
                latest =
                    curves[pair.Key].TryLatest(pair.Value, confidence, side, out var end) && latest.HasValue
                        ? Later(latest.Value, end)
                        : null;
            }

            return latest;
        }

        // Any of the sizes may be too late for its early end: each gets its share of the doubt.
        DateTimeOffset Earliest()
        {
            var doubt = side == IntervalSide.Both ? (1 - confidence) / 2 : 1 - confidence;
            return limits.Max(pair =>
                curves[pair.Key].TimeTo(pair.Value, 1 - doubt / limits.Count, IntervalSide.Lower) switch
                {
                    TimeToTarget.NotBefore it => it.Earliest,
                    _ => curves[pair.Key].Origin,
                }
            );
        }
    }

    private static DateTimeOffset Later(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;

    private static int Rank(TimeToTarget one) =>
        one switch
        {
            TimeToTarget.OutOfReach => 4,
            TimeToTarget.TooFewReadings or TimeToTarget.TooFewAboveLimit => 3,
            TimeToTarget.NotDemonstrated => 2,
            TimeToTarget.NotBefore { HasEstimate: false } => 2,
            TimeToTarget.Reached => 0,
            _ => 1,
        };

    private static DateTimeOffset Estimate(TimeToTarget one) =>
        one switch
        {
            TimeToTarget.Expected it => it.Estimate,
            TimeToTarget.DoneBy it => it.Estimate,
            TimeToTarget.NotBefore it => it.Estimate,
            TimeToTarget.Reached it => it.At,
            TimeToTarget.NotDemonstrated it => it.Earliest,
            _ => DateTimeOffset.MinValue,
        };
}
