namespace OilCondition.Planning;

/// <summary>Stretches of whole steps, [From, To), sorted and apart from one another: windows, crew hours, times that are free.</summary>
internal sealed class Stretches
{
    private readonly (long From, long To)[] parts;

    public Stretches(IEnumerable<(long From, long To)> stretches)
    {
        var merged = new List<(long From, long To)>();
        foreach (var part in stretches.Where(part => part.From < part.To).OrderBy(part => part.From))
        {
            if (merged.Count > 0 && part.From <= merged[^1].To)
            {
                merged[^1] = (merged[^1].From, Math.Max(merged[^1].To, part.To));
            }
            else
            {
                merged.Add(part);
            }
        }

        parts = [.. merged];
    }

    public IReadOnlyList<(long From, long To)> Parts => parts;

    public bool IsEmpty => parts.Length == 0;

    public long Longest => parts.Select(part => part.To - part.From).DefaultIfEmpty(0).Max();

    /// <summary>What lies in both.</summary>
    public Stretches And(Stretches other)
    {
        var both = new List<(long From, long To)>();
        var (i, k) = (0, 0);
        while (i < parts.Length && k < other.parts.Length)
        {
            both.Add((Math.Max(parts[i].From, other.parts[k].From), Math.Min(parts[i].To, other.parts[k].To)));
            if (parts[i].To < other.parts[k].To)
            {
                i++;
            }
            else
            {
                k++;
            }
        }

        return new Stretches(both);
    }

    /// <summary>What is left of the steps from 0 to the horizon.</summary>
    public Stretches Without(Stretches other, long horizon) =>
        And(
            new Stretches(
                other
                    .parts.Select(part => part.To)
                    .Prepend(0)
                    .Zip(other.parts.Select(part => part.From).Append(horizon))
            )
        );

    /// <summary>First begin of a stretch of work that fits, from a step on; null where none does.</summary>
    public long? Earliest(long from, long length)
    {
        for (var i = First(from); i < parts.Length; i++)
        {
            var begin = Math.Max(from, parts[i].From);
            if (begin + length <= parts[i].To)
            {
                return begin;
            }
        }

        return null;
    }

    /// <summary>Last begin of a stretch of work that fits and is over by a step; null where none does.</summary>
    public long? Latest(long until, long length)
    {
        for (var i = parts.Length - 1; i >= 0; i--)
        {
            var begin = Math.Min(until, parts[i].To) - length;
            if (begin >= parts[i].From)
            {
                return begin;
            }
        }

        return null;
    }

    /// <summary>The first part that ends after a step, by halving.</summary>
    private int First(long from)
    {
        var (low, high) = (0, parts.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (parts[middle].To > from)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low;
    }
}
