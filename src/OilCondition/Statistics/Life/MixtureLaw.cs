using System.Buffers;

namespace OilCondition.Statistics;

/// <summary>The weighted mean of the chances of several movements, given that the limit is not passed at the last reading.</summary>
internal sealed class MixtureLaw : IDisposable
{
    private readonly PathGroup[] groups;
    private readonly double[] room;
    private readonly CycleAhead? cycle;
    private readonly double nearerAtStart;
    private int count;
    private double weight;

    /// <summary>The chance at the last reading; null until all paths are there.</summary>
    private double? atStart;

    /// <summary>What stands adds the same at any time: the sum of weight times chance.</summary>
    private double standing;

    /// <summary>Starts a mixture.</summary>
    /// <param name="most">The most paths that may be added.</param>
    /// <param name="cycle">A cycle that goes on; null for none.</param>
    public MixtureLaw(int most, CycleAhead? cycle)
    {
        groups = ArrayPool<PathGroup>.Shared.Rent(most);
        room = ArrayPool<double>.Shared.Rent(most * PathBlock.Size);
        this.cycle = cycle;
        nearerAtStart = cycle?.NearerAt(0) ?? 0;
    }

    /// <summary>Adds a path; those that are alike and follow one another stand in one group.</summary>
    public void Add(in PassagePath path)
    {
        weight += path.Weight;
        if (cycle is null && path.IsStanding)
        {
            standing += path.Weight * path.AtStart(0);
        }
        else
        {
            if (count == 0 || !groups[count - 1].IsAlike(path))
            {
                groups[count] = new PathGroup(path, End);
                count++;
            }

            groups[count - 1].Add(room, path);
        }
    }

    /// <summary>The chance by a time since the last reading.</summary>
    public double Passed(double time)
    {
        var begun = atStart ??= Beyond(0, nearerAtStart);
        if (!(begun < 1))
        {
            return time > 0 ? 1 : 0;
        }

        // Within a cycle the latest peak may have been nearer to the limit than now.
        var beyond = Beyond(time, cycle?.NearerAt(time) ?? 0);
        if (cycle?.LastPeakBefore(time) is { } peak)
        {
            beyond = Math.Max(beyond, Beyond(peak, cycle.Highest));
        }

        return Math.Min(1, Math.Max(0, (beyond - begun) / (1 - begun)));
    }

    /// <summary>Gives back the room for the figures of the paths.</summary>
    public void Dispose()
    {
        ArrayPool<PathGroup>.Shared.Return(groups);
        ArrayPool<double>.Shared.Return(room);
    }

    /// <summary>The chance of being beyond at a time since the last reading, or of having been there and back.</summary>
    /// <param name="time">The time.</param>
    /// <param name="nearer">How much nearer the limit lies for a part of the state that is known beforehand, such as a season.</param>
    internal double Beyond(double time, double nearer)
    {
        var all = groups.AsSpan(0, count);
        foreach (ref readonly var group in all)
        {
            group.Go(room, time, nearer);
        }

        for (var i = 0; i < all.Length; )
        {
            var first = i;
            while (i < all.Length && all[i].Student == all[first].Student)
            {
                i++;
            }

            PathBlock.FindChances(room.AsSpan()[all[first].Start..all[i - 1].End], all[first].Student);
        }

        foreach (ref var group in all)
        {
            group.AddReturns(room, nearer);
        }

        return (standing + PathBlock.Sum(room.AsSpan(0, End))) / weight;
    }

    private int End => count > 0 ? groups[count - 1].End : 0;
}
