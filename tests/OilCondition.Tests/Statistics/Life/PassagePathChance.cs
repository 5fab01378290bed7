using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The chance of one path by itself, as a mixture works it out for many at once.</summary>
internal static class PassagePathChance
{
    public static double At(this PassagePath path, double time, double nearer) =>
        Together(path).Beyond(time, nearer) / path.Weight;

    public static PathGroup Together(params PassagePath[] paths)
    {
        var group = new PathGroup(paths[0], new double[paths.Length * PathGroup.Block]);
        foreach (var path in paths.Skip(1))
        {
            group.Add(path);
        }

        return group;
    }

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
