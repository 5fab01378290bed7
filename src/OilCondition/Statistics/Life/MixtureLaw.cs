namespace OilCondition.Statistics;

/// <summary>The weighted mean of the laws of several paths. Where none has any weight the limit is crossed for certain.</summary>
internal sealed class MixtureLaw : CrossingLaw
{
    private readonly PassagePath[] paths;
    private readonly double total;

    public MixtureLaw(PassagePath[] paths)
    {
        this.paths = paths;
        total = paths.Sum(path => path.Weight);
    }

    private protected override double Passed(double time)
    {
        if (!(total > 0))
        {
            return time > 0 ? 1 : 0;
        }

        double chance = 0;
        foreach (var path in paths)
        {
            chance += path.Weight * path.ChanceBefore(time);
        }

        return Math.Min(1, chance / total);
    }
}
