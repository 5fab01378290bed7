using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The chance of one path by itself, as a mixture works it out for many at once.</summary>
internal static class PassagePathChance
{
    /// <summary>The chance of being beyond or of having been there and back, whatever was at the last reading.</summary>
    public static double At(this PassagePath path, double time, double nearer) =>
        Mixed(null, path).Beyond(time, nearer);

    public static MixtureLaw Mixed(CycleAhead? cycle, params PassagePath[] paths)
    {
        var law = new MixtureLaw(paths.Length, cycle);
        foreach (var path in paths)
        {
            law.Add(path);
        }

        return law;
    }
}
