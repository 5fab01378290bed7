namespace OilCondition.Statistics;

/// <summary>The weighted mean of the laws of several paths.</summary>
internal sealed class MixtureLaw : CrossingLaw
{
    private readonly PassagePath[] paths;

    public MixtureLaw(PassagePath[] paths)
    {
        this.paths = paths;
    }

    private protected override double Passed(double time)
    {
        double chance = 0;
        foreach (var path in paths)
        {
            chance += path.Weight * path.ChanceBefore(time);
        }

        return Math.Min(1, chance);
    }
}
