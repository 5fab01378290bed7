namespace OilCondition.Planning;

/// <summary>
/// A weighted lateness below which no plan can come: the cheapest walk in time, in which the unit may visit a machine twice or never, at prices that make it
/// visit each about once.
/// </summary>
/// <remarks>
/// For any prices u the least of Σ (w T − u) over all walks, plus Σ u, is a bound, since every plan is such a walk (Lagrangian relaxation of a time-indexed
/// path: Abdul-Razaq and Potts 1988, from memory). Ways, windows, crew hours and releases count in full: a step of the walk is
/// <see cref="GridCourse.Next"/>. Prices are climbed by subgradients, in whole numbers, so that rounding cannot make a bound too high.
/// </remarks>
internal sealed class LatenessBound
{
    /// <summary>Steps of walks that are looked at for each unit of effort.</summary>
    private const double StepsPerEffort = 6e7;

    private const long Never = long.MaxValue / 4;

    private readonly GridProblem problem;
    private readonly int count;
    private readonly int last;
    private readonly int[][] ends;
    private readonly long[][] costs;
    private readonly long[][] best;
    private readonly int[][] before;

    private LatenessBound(GridProblem problem)
    {
        this.problem = problem;
        count = problem.Tasks.Count;
        last = (int)problem.LastFree;
        ends = new int[count][];
        costs = new long[count][];
        best = new long[count][];
        before = new int[count][];
        for (var task = 0; task < count; task++)
        {
            (ends[task], costs[task]) = VisitsOf(problem.Tasks[task]);
            best[task] = new long[last + 1];
            before[task] = new int[last + 1];
        }
    }

    public static long Of(GridProblem problem, long known, double effort)
    {
        var weights = problem.Tasks.Select(task => task.Weight).ToList();
        var prices = Enumerable
            .Range(0, weights.Count)
            .Select(task => weights[task] * AloneLate(problem, task))
            .ToArray();
        var bound = prices.Sum();
        var steps = (double)(problem.LastFree + 1) * weights.Count * weights.Count;
        var rounds = (int)Math.Min(400, StepsPerEffort * effort / Math.Max(1, steps));
        if (bound < known && rounds > 0)
        {
            bound = Math.Max(bound, new LatenessBound(problem).Climb(prices, known, rounds));
        }

        // Lateness comes in whole multiples of what all weights share.
        var share = Math.Max(1, weights.Aggregate(0L, Share));
        return Math.Min(known, (bound + share - 1) / share * share);
    }

    private static long Share(long a, long b) => b == 0 ? a : Share(b, a % b);

    private static long AloneLate(GridProblem problem, int task)
    {
        var what = problem.Tasks[task];
        var begin = what.Starts.Earliest(problem.Free + problem.ShortestWay(task), 1) ?? problem.Free;
        return Math.Max(0, begin + what.ToProcessEnd - what.Due);
    }

    private long Climb(long[] prices, long known, int rounds)
    {
        var highest = 0L;
        var (scale, since) = (1.0, 0);
        var visits = new int[count];
        for (var round = 0; round < rounds && highest < known; round++)
        {
            var bound = Walk(prices, visits) + prices.Sum();
            since = bound > highest ? 0 : since + 1;
            highest = Math.Max(highest, bound);
            if (since == 8)
            {
                (scale, since) = (scale * 0.6, 0);
            }

            var norm = visits.Sum(many => (double)(1 - many) * (1 - many));
            if (norm == 0)
            {
                break;
            }

            var step = scale * Math.Max(1, known - bound) / norm;
            for (var task = 0; task < count; task++)
            {
                prices[task] += (long)(step * (1 - visits[task]));
            }
        }

        return highest;
    }

    /// <summary>The cheapest walk at some prices, and how often it visits each task.</summary>
    private long Walk(long[] prices, int[] visits)
    {
        foreach (var row in best)
        {
            Array.Fill(row, Never);
        }

        var (cheapest, end, at) = (0L, -1, 0);
        Extend(-1, (int)problem.Free, 0, prices);
        for (var time = 0; time <= last; time++)
        {
            for (var task = 0; task < count; task++)
            {
                var value = best[task][time];
                if (value >= Never)
                {
                    continue;
                }

                if (value < cheapest)
                {
                    (cheapest, end, at) = (value, task, time);
                }

                Extend(task, time, value, prices);
            }
        }

        Array.Clear(visits);
        while (end >= 0)
        {
            visits[end]++;
            var code = before[end][at];
            (end, at) = (code % (count + 1) - 1, code / (count + 1));
        }

        return cheapest;
    }

    private void Extend(int task, int time, long value, long[] prices)
    {
        var code = time * (count + 1) + task + 1;
        for (var next = 0; next < count; next++)
        {
            if (next == task || Arrive(task, next, time) is not { } arrive || arrive > last)
            {
                continue;
            }

            var end = ends[next][arrive];
            if (end < 0)
            {
                continue;
            }

            var cost = value + costs[next][arrive] - prices[next];
            if (cost < best[next][end])
            {
                best[next][end] = cost;
                before[next][end] = code;
            }
        }
    }

    private long? Arrive(int task, int next, int time)
    {
        var way = problem.Travel(task, next);
        return problem.Off.IsEmpty ? time + way : problem.Leave(time, way) + way;
    }

    /// <summary>End and weighted lateness of a visit by a unit that arrives at a step; end −1 where no begin is left.</summary>
    private (int[] Ends, long[] Costs) VisitsOf(GridTask task)
    {
        var end = new int[last + 1];
        var cost = new long[last + 1];
        for (var arrive = 0; arrive <= last; arrive++)
        {
            end[arrive] = -1;
            if (task.Starts.Earliest(arrive, 1) is not { } start)
            {
                continue;
            }

            var processEnd = start + task.ToProcessEnd;
            var free = task.DisconnectStart(processEnd)!.Value + task.Disconnect;
            end[arrive] = free > last ? -1 : (int)free;
            cost[arrive] = GridCourse.WeightedLateness(task, processEnd);
        }

        return (end, cost);
    }
}
