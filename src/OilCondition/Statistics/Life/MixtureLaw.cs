using System.Buffers;

namespace OilCondition.Statistics;

/// <summary>The weighted mean of the chances of several movements, given that the limit is not passed at the last reading.</summary>
internal sealed class MixtureLaw : IDisposable
{
    private readonly List<PathGroup> groups = new(12);
    private readonly double[] room;
    private readonly CycleAhead? cycle;
    private readonly double weight;
    private readonly double atStart;

    /// <summary>What stands adds the same at any time: the sum of weight times chance.</summary>
    private readonly double standing;

    /// <summary>Mixes paths; those that are alike and follow one another stand in one group.</summary>
    public MixtureLaw(ReadOnlySpan<PassagePath> all, CycleAhead? cycle)
    {
        room = ArrayPool<double>.Shared.Rent(all.Length * PathGroup.Block);
        var taken = 0;
        for (var from = 0; from < all.Length; )
        {
            if (cycle is null && all[from].IsStanding)
            {
                standing += all[from].Weight * all[from].AtStart(0);
                from++;
                continue;
            }

            var to = from + 1;
            while (to < all.Length && PathGroup.AreAlike(all[from], all[to]))
            {
                to++;
            }

            var group = new PathGroup(all[from..to], room.AsMemory(taken));
            groups.Add(group);
            taken += group.Size;
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

    /// <summary>Gives back the room for the figures of the paths.</summary>
    public void Dispose() => ArrayPool<double>.Shared.Return(room);

    private double Beyond(double time, double nearer)
    {
        var chance = standing;
        foreach (var group in groups)
        {
            chance += group.Beyond(time, nearer);
        }

        return chance / weight;
    }
}
