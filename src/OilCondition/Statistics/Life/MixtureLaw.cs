namespace OilCondition.Statistics;

/// <summary>The weighted mean of the laws of several paths. Where none has any weight the limit is crossed for certain.</summary>
internal sealed class MixtureLaw : CrossingLaw
{
    private readonly PathColumns? columns;
    private readonly PassagePath[] others;
    private readonly double total;

    /// <summary>Takes paths; those with a known start and the degrees of freedom of the rule are worked out side by side.</summary>
    public MixtureLaw(List<PassagePath> paths, PassageRule given)
    {
        double typical = 0;
        foreach (var path in paths)
        {
            total += path.Weight;
            typical += path.Weight * path.TypicalTime;
        }

        TypicalTime = total > 0 ? typical / total : 0;
        var fits =
            given.DegreesOfFreedom <= StudentDistribution.LongestSeries
            && paths.Exists(path => path.FitsColumns(given));
        columns = fits ? new PathColumns(given, paths) : null;
        others = fits ? [.. paths.Where(path => !path.FitsColumns(given))] : [.. paths];
    }

    private protected override double TypicalTime { get; }

    private protected override double Passed(double time)
    {
        if (!(total > 0))
        {
            return time > 0 ? 1 : 0;
        }

        if (!(time > 0))
        {
            return 0;
        }

        var chance = columns?.Chance(time) ?? 0;
        foreach (var path in others)
        {
            chance += path.Weight * path.ChanceBefore(time);
        }

        return Math.Min(1, chance / total);
    }
}
