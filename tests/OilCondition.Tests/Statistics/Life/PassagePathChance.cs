using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The chance of one path, put together as a mixture does it for many at once.</summary>
internal static class PassagePathChance
{
    public static double At(this PassagePath path, double time, double nearer)
    {
        var beyond = StudentDistribution.Below(path.Standardised(time, nearer, out var clock), path.DegreesOfFreedom);
        return path.MayReturn ? path.WithReturn(beyond, clock, nearer) : beyond;
    }
}
