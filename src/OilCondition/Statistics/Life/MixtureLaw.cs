namespace OilCondition.Statistics;

/// <summary>The weighted mean of the chances of several movements, given that the limit is not passed at the last reading.</summary>
internal sealed class MixtureLaw
{
    private readonly List<PathGroup> groups = new(12);
    private readonly CycleAhead? cycle;
    private readonly double weight;
    private readonly double atStart;

    /// <summary>Mixes paths; those that are alike and follow one another stand in one group.</summary>
    public MixtureLaw(ReadOnlySpan<PassagePath> all, CycleAhead? cycle)
    {
        for (var from = 0; from < all.Length; )
        {
            var to = from + 1;
            while (to < all.Length && PathGroup.AreAlike(all[from], all[to]))
            {
                to++;
            }

            groups.Add(new PathGroup(all[from..to]));
            from = to;
        }

        this.cycle = cycle;
        var nearer = cycle?.NearerAt(0) ?? 0;
        foreach (ref readonly var path in all)
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
        double chance = 0;
        foreach (var group in groups)
        {
            chance += group.Beyond(time, nearer);
        }

        return chance / weight;
    }
}
