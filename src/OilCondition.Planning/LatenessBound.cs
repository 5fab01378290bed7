namespace OilCondition.Planning;

/// <summary>
/// A weighted lateness below which no plan can come, and the same for what is left of a plan that has begun: the cheapest walk in time, in which the unit may
/// visit a machine twice or never, at prices that make it visit each about once.
/// </summary>
/// <remarks>
/// For any prices u the least of Σ (w T − u) over all walks, plus Σ u, is a bound, since every plan is such a walk (Lagrangian relaxation of a time-indexed
/// path: Abdul-Razaq and Potts 1988, from memory). No walk goes to a machine and straight back. Ways, windows, crew hours and releases count in full: a
/// step of the walk is <see cref="GridCourse.Next"/>. Prices are climbed by subgradients, in whole numbers, so that rounding cannot make a bound too high.
/// </remarks>
internal sealed class LatenessBound
{
    /// <summary>Steps of walks that are looked at for each unit of effort.</summary>
    private const double StepsPerEffort = 3e7;

    private const int MostRounds = 600;

    /// <summary>Fewer rounds would say nothing.</summary>
    private const int LeastRounds = 5;

    private readonly GridProblem problem;
    private readonly int count;
    private readonly int last;
    private readonly long share;
    private readonly Visit[][] visits;
    private readonly List<(int Task, int Time)> reached = [];
    private readonly Rest[][] rests;

    /// <summary>Climbs as long as the effort goes, or the known lateness is not reached; without effort each machine counts as if it came first.</summary>
    public LatenessBound(GridProblem problem, GridCourse plan, double effort)
    {
        var known = plan.Cost.Lateness;
        this.problem = problem;
        count = problem.Tasks.Count;
        last = (int)problem.LastFree;
        var weights = problem.Tasks.Select(task => task.Weight).ToList();
        Prices = [.. weights.Select((weight, task) => weight * AloneLate(problem, task))];
        share = Math.Max(1, weights.Aggregate(0L, Share));
        visits = [];
        rests = [];
        Value = Prices.Sum();
        var steps = StepsPerEffort * effort;
        if (Value < known && steps > LeastRounds * (last + 1.0) * count * count)
        {
            visits = [.. problem.Tasks.Select(task => VisitsOf(task, known))];
            rests = [.. problem.Tasks.Select(_ => new Rest[last + 1])];
            FindReached();
            Climb(PricesOf(plan), known, (int)Math.Min(MostRounds, steps / (reached.Count * count + 1.0)));
        }

        Value = Math.Min(known, Rounded(Value));
    }

    /// <summary>No plan has less.</summary>
    public long Value { get; private set; }

    /// <summary>What each machine not yet visited adds to the bound of a plan that has begun.</summary>
    public long[] Prices { get; private set; }

    /// <summary>Lateness comes in whole multiples of what all weights share.</summary>
    public long Rounded(long bound) => (bound + share - 1) / share * share;

    /// <summary>The rest of a plan that has come to a task and is free at a step costs no less than this and the prices of the machines that are open.</summary>
    public long RestAfter(int task, int before, long free) => rests.Length == 0 ? 0 : rests[task][free].Without(before);

    private static long Share(long a, long b) => b == 0 ? a : Share(b, a % b);

    private static long AloneLate(GridProblem problem, int task)
    {
        var what = problem.Tasks[task];
        var begin = what.Starts.Earliest(problem.Free + problem.ShortestWay(task), 1) ?? problem.Free;
        return Math.Max(0, begin + what.ToProcessEnd - what.Due);
    }

    /// <summary>What each visit of a plan costs, and what the late ones after it would save if its time were free.</summary>
    private long[] PricesOf(GridCourse plan)
    {
        var prices = Prices.ToArray();
        var weightAfter = 0L;
        for (var i = plan.Visits.Count - 1; i >= 0; i--)
        {
            var visit = plan.Visits[i];
            var begin = i == 0 ? problem.Free : plan.Visits[i - 1].DisconnectEnd;
            var lateness = GridCourse.WeightedLateness(problem.Tasks[visit.Task], visit.ProcessEnd);
            prices[visit.Task] = lateness + weightAfter * (visit.DisconnectEnd - begin);
            weightAfter += lateness > 0 ? problem.Tasks[visit.Task].Weight : 0;
        }

        return prices;
    }

    private void Climb(long[] prices, long known, int rounds)
    {
        var best = prices;
        var (scale, since) = (1.0, 0);
        var direction = new double[count];
        for (var round = 0; round < rounds && Rounded(Value) < known; round++)
        {
            var bound = Walk(prices, out var often) + prices.Sum();
            since = bound > Value ? 0 : since + 1;
            if (bound > Value || round == 0)
            {
                (Value, best) = (Math.Max(Value, bound), prices);
            }

            if (since == 10)
            {
                (scale, since) = (0.8 * scale, 0);
            }

            for (var task = 0; task < count; task++)
            {
                direction[task] = (1 - often[task]) + 0.6 * direction[task];
            }

            var norm = direction.Sum(one => one * one);
            if (norm == 0)
            {
                break;
            }

            var step = scale * Math.Max(1, 1.02 * known - bound) / norm;
            prices = [.. prices.Select((price, task) => price + (long)(step * direction[task]))];
        }

        Prices = best;
        Walk(best, out _);
    }

    /// <summary>The cheapest walk at some prices, found from its end, and how often it visits each task.</summary>
    private long Walk(long[] prices, out int[] often)
    {
        for (var i = reached.Count - 1; i >= 0; i--)
        {
            var (task, time) = reached[i];
            rests[task][time] = RestOf(task, time, prices);
        }

        var start = RestOf(-1, (int)problem.Free, prices);
        often = new int[count];
        var (before, at, free, rest) = (-2, -1, (int)problem.Free, start);
        while (rest.NextWithout(before) is >= 0 and var next)
        {
            often[next]++;
            (before, at, free) = (at, next, visits[next][Arrive(at, next, free)].End);
            rest = rests[at][free];
        }

        return start.Best;
    }

    /// <summary>The best way on, and the best that goes elsewhere.</summary>
    private Rest RestOf(int task, int time, long[] prices)
    {
        var (best, next, second, other) = (0L, -1, long.MaxValue, -1);
        for (var to = 0; to < count; to++)
        {
            var arrive = to == task ? last + 1 : Arrive(task, to, time);
            if (arrive > last || visits[to][arrive] is not { End: >= 0 } visit)
            {
                continue;
            }

            var cost = visit.Cost - prices[to] + rests[to][visit.End].Without(task);
            if (cost < best)
            {
                (best, next, second, other) = (cost, to, best, next);
            }
            else if (cost < second)
            {
                (second, other) = (cost, to);
            }
        }

        return new Rest(best, next, second, other);
    }

    /// <summary>Every task and step at which a walk can be free of it, in the order of the steps.</summary>
    private void FindReached()
    {
        var isReached = new bool[last + 1, count];
        void Extend(int task, int time)
        {
            for (var to = 0; to < count; to++)
            {
                var arrive = to == task ? last + 1 : Arrive(task, to, time);
                if (arrive <= last && visits[to][arrive].End is >= 0 and var end)
                {
                    isReached[end, to] = true;
                }
            }
        }

        Extend(-1, (int)problem.Free);
        for (var time = 0; time <= last; time++)
        {
            for (var task = 0; task < count; task++)
            {
                if (isReached[time, task])
                {
                    reached.Add((task, time));
                    Extend(task, time);
                }
            }
        }
    }

    private int Arrive(int task, int next, int time)
    {
        var way = problem.Travel(task, next);
        var leave = problem.Off.IsEmpty ? time : problem.Leave(time, way);
        return leave is { } at && at + way <= last ? (int)(at + way) : last + 1;
    }

    /// <summary>The visit of a unit that arrives at each step; end −1 where no begin is left, or where it alone is later than a plan that is known.</summary>
    private Visit[] VisitsOf(GridTask task, long known)
    {
        var all = new Visit[last + 1];
        for (var arrive = 0; arrive <= last; arrive++)
        {
            all[arrive] = new Visit(-1, 0);
            if (task.Starts.Earliest(arrive, 1) is not { } start)
            {
                continue;
            }

            var processEnd = start + task.ToProcessEnd;
            var free = task.DisconnectStart(processEnd)!.Value + task.Disconnect;
            var cost = GridCourse.WeightedLateness(task, processEnd);
            all[arrive] = new Visit(free > last || cost > known ? -1 : (int)free, cost);
        }

        return all;
    }

    private readonly record struct Visit(int End, long Cost);

    /// <summary>Cost and next task of the best way on, and of the best to another task.</summary>
    private readonly record struct Rest(long Best, int Next, long Second, int Other)
    {
        public long Without(int task) => task == Next && task >= 0 ? Second : Best;

        public int NextWithout(int task) => task == Next && task >= 0 ? Other : Next;
    }
}
