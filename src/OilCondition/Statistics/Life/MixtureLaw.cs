namespace OilCondition.Statistics;

/// <summary>The weighted mean of the chances of several movements, given that the limit is not passed at the last reading.</summary>
internal sealed class MixtureLaw
{
    private readonly PassagePath[] paths;
    private readonly CycleAhead? cycle;
    private readonly StudentSeries student;
    private readonly int shared;
    private readonly double weight;
    private readonly double atStart;

    // Room for one time: clocks, standardised distances and chances of the paths that share their degrees of freedom.
    private readonly double[] clocks;
    private readonly double[] chances;

    public MixtureLaw(List<PassagePath> all, CycleAhead? cycle)
    {
        // Those with the degrees of freedom of most come first: their chances are worked out four at once.
        var common = all.GroupBy(path => path.DegreesOfFreedom).OrderByDescending(group => group.Count()).First().Key;
        paths =
        [
            .. all.Where(path => path.DegreesOfFreedom == common),
            .. all.Where(path => path.DegreesOfFreedom != common),
        ];
        shared = all.Count(path => path.DegreesOfFreedom == common);
        student = StudentSeries.For(common);
        clocks = new double[shared];
        chances = new double[(shared + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width];
        this.cycle = cycle;
        var nearer = cycle?.NearerAt(0) ?? 0;
        foreach (var path in paths)
        {
            weight += path.Weight;
            atStart += path.Weight * path.AtStart(nearer);
        }

        atStart /= weight;
    }

    /// <summary>The chance by a time since the last reading.</summary>
    public double Passed(double time)
    {
        if (!(atStart < 1))
        {
            return time > 0 ? 1 : 0;
        }

        // Within a cycle the latest peak may have been nearer to the limit than now.
        var beyond = Beyond(time, cycle?.NearerAt(time) ?? 0);
        if (cycle?.LastPeakBefore(time) is { } peak)
        {
            beyond = Math.Max(beyond, Beyond(peak, cycle.Highest));
        }

        return Math.Min(1, Math.Max(0, (beyond - atStart) / (1 - atStart)));
    }

    private double Beyond(double time, double nearer)
    {
        for (var i = 0; i < shared; i++)
        {
            chances[i] = paths[i].Standardised(time, nearer, out clocks[i]);
        }

        student.Below(chances, shared);
        double chance = 0;
        for (var i = 0; i < paths.Length; i++)
        {
            var path = paths[i];
            var clock = i < shared ? clocks[i] : 0;
            var beyond =
                i < shared
                    ? chances[i]
                    : StudentDistribution.Below(path.Standardised(time, nearer, out clock), path.DegreesOfFreedom);
            chance += path.Weight * (path.MayReturn ? path.WithReturn(beyond, clock, nearer) : beyond);
        }

        return chance / weight;
    }
}
