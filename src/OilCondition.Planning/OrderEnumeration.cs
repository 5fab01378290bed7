namespace OilCondition.Planning;

/// <summary>
/// Every order that can still be the best, one visit longer at a time. Of beginnings with the same machines that end at the same place, only those are kept
/// to which no other is both as cheap and free as early: whatever follows, the others end no better.
/// </summary>
/// <remarks>
/// Dynamic programming over subsets (Held and Karp 1962, from memory) with pairs of cost and time. A beginning whose bound is no better than the best known
/// plan is dropped. Where there are too many, those of the highest bound are dropped, and the lowest of these stays as a bound of all plans.
/// </remarks>
internal sealed class OrderEnumeration
{
    /// <summary>Up to so many machines nothing is dropped for being too many.</summary>
    public const int AlwaysComplete = 12;

    /// <summary>The machines of a beginning are the bits of a word.</summary>
    public const int MostMachines = 64;

    /// <summary>Visits that are tried for each unit of effort.</summary>
    private const double TriesPerEffort = 2e5;

    private readonly GridProblem problem;
    private readonly LatenessBound bound;
    private readonly int count;
    private readonly long[] work;
    private readonly long[] lastFree;
    private readonly int[] places;
    private long triesLeft;
    private GridCost best;
    private Beginning? bestOrder;

    public OrderEnumeration(GridProblem problem, GridCourse known, LatenessBound bound, double effort)
    {
        this.problem = problem;
        this.bound = bound;
        count = problem.Tasks.Count;
        best = known.Cost;
        work = [.. problem.Tasks.Select((task, i) => task.Least + problem.ShortestWay(i))];
        lastFree =
        [
            .. problem.Tasks.Select(
                (task, i) =>
                    (task.StartsInTime.IsEmpty ? -1 : task.StartsInTime.Parts[^1].To - 1) - problem.ShortestWay(i)
            ),
        ];
        var names = problem.Tasks.Select(task => task.Task.Place).Distinct(StringComparer.Ordinal).ToList();
        places = [.. problem.Tasks.Select(task => names.IndexOf(task.Task.Place))];
        triesLeft = count <= AlwaysComplete ? long.MaxValue : (long)(TriesPerEffort * effort);
        LowestDropped = long.MaxValue;
        Follow();
        Best = bestOrder is { } found ? GridCourse.Of(problem, OrderOf(found)) : known;
    }

    /// <summary>The best plan that was found, or the one that was known.</summary>
    public GridCourse Best { get; }

    /// <summary>The lowest weighted lateness that a plan can have that was not looked at.</summary>
    public long LowestDropped { get; private set; }

    /// <summary>Whether there is no plan that was not looked at.</summary>
    public bool IsComplete => LowestDropped == long.MaxValue;

    private void Follow()
    {
        List<Beginning> layer = [new(0, -1, null, 0, 0, problem.Free, bound.Prices.Sum(), work.Sum(), 0)];
        for (var visited = 0; layer.Count > 0; visited++)
        {
            foreach (var one in layer)
            {
                var cost = new GridCost(count - visited, one.Overshoot, one.Lateness, one.Free);
                if (cost.IsBelow(best))
                {
                    (best, bestOrder) = (cost, one);
                }
            }

            layer = Longer(Narrow(layer, count - visited));
        }
    }

    /// <summary>As many as can be followed if all layers that come are as wide.</summary>
    private List<Beginning> Narrow(List<Beginning> layer, int open)
    {
        var tries = open * (open + 1L) / 2;
        var width = tries == 0 ? layer.Count : (int)Math.Clamp(triesLeft / tries, 1, int.MaxValue);
        triesLeft -= (long)Math.Min(width, layer.Count) * open;
        if (layer.Count <= width)
        {
            return layer;
        }

        var sorted = layer.OrderBy(one => one.Bound).ThenBy(one => one.Free).ToList();
        LowestDropped = Math.Min(LowestDropped, sorted[width].Bound);
        return sorted[..width];
    }

    private List<Beginning> Longer(List<Beginning> layer)
    {
        var kept = new Dictionary<(ulong Done, int Place), List<Beginning>>();
        foreach (var one in layer)
        {
            for (var task = 0; task < count; task++)
            {
                if ((one.Done & (1UL << task)) != 0 || With(one, task) is not { } longer || IsHopeless(longer))
                {
                    continue;
                }

                var key = (longer.Done, places[task]);
                if (!kept.TryGetValue(key, out var rivals))
                {
                    kept[key] = rivals = [];
                }

                if (!rivals.Exists(rival => rival.IsAsGoodAs(longer)))
                {
                    rivals.RemoveAll(longer.IsAsGoodAs);
                    rivals.Add(longer);
                }
            }
        }

        return [.. kept.Values.SelectMany(rivals => rivals)];
    }

    private Beginning? With(Beginning one, int task)
    {
        if (GridCourse.Next(problem, one.Last, one.Free, task) is not { } visit)
        {
            return null;
        }

        var what = problem.Tasks[task];
        var lateness = one.Lateness + GridCourse.WeightedLateness(what, visit.ProcessEnd);
        var open = one.OpenPrices - bound.Prices[task];
        return new Beginning(
            one.Done | (1UL << task),
            task,
            one,
            one.Overshoot + GridCourse.Overshoot(what, visit.DisconnectEnd),
            lateness,
            visit.DisconnectEnd,
            open,
            one.OpenWork - work[task],
            Math.Max(one.Bound, bound.Rounded(lateness + open + bound.RestAfter(task, one.Last, visit.DisconnectEnd)))
        );
    }

    /// <summary>Whether it cannot come to a better plan than the best that fits.</summary>
    private bool IsHopeless(Beginning one)
    {
        if (!best.Fits)
        {
            return false;
        }

        if (one.Overshoot > 0 || (one.Bound, one.Free + one.OpenWork).CompareTo((best.Lateness, best.Free)) >= 0)
        {
            return true;
        }

        for (var task = 0; task < count; task++)
        {
            if ((one.Done & (1UL << task)) == 0 && one.Free > lastFree[task])
            {
                return true;
            }
        }

        return false;
    }

    private List<int> OrderOf(Beginning end)
    {
        var order = new List<int>();
        for (var one = end; one.Before is { } before; one = before)
        {
            order.Insert(0, one.Last);
        }

        return [.. order, .. Enumerable.Range(0, count).Except(order).ToList()];
    }

    /// <summary>The first visits of an order, what they cost, and a bound of the lateness of all orders that begin so.</summary>
    private sealed record Beginning(
        ulong Done,
        int Last,
        Beginning? Before,
        long Overshoot,
        long Lateness,
        long Free,
        long OpenPrices,
        long OpenWork,
        long Bound
    )
    {
        public bool IsAsGoodAs(Beginning other) =>
            Free <= other.Free && (Overshoot, Lateness).CompareTo((other.Overshoot, other.Lateness)) <= 0;
    }
}
