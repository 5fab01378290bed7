using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The chance of one path by itself, as a mixture works it out for many at once.</summary>
internal static class PassagePathChance
{
    public static double At(this PassagePath path, double time, double nearer) =>
        new PathGroup([path], new double[PathGroup.Block]).Beyond(time, nearer) / path.Weight;
}
