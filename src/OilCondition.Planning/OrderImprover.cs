namespace OilCondition.Planning;

/// <summary>
/// Improves an order by moving one visit or swapping two, then shakes it and improves again. It proves nothing: it gives the solver an order to begin with.
/// </summary>
internal static class OrderImprover
{
    private const int Seed = 20260302;

    /// <summary>Visits that are computed for each unit of effort.</summary>
    private const int VisitsPerEffort = 1_500_000;

    public static IReadOnlyList<int> Improve(GridProblem problem, IReadOnlyList<int> order, double effort)
    {
        if (order.Count < 2)
        {
            return order;
        }

        var random = new Random(Seed);
        var search = new Search(problem, order.Count, (long)(VisitsPerEffort * effort));
        var best = order.ToArray();
        var bestCost = search.Descend(best);
        while (search.VisitsLeft > 0)
        {
            var other = best.ToArray();
            for (var shake = 0; shake < 3; shake++)
            {
                Move(other, random.Next(other.Length), random.Next(other.Length));
            }

            var cost = search.Descend(other);
            if (!bestCost.IsBelow(cost))
            {
                (best, bestCost) = (other, cost);
            }
        }

        return best;
    }

    private static void Move(int[] order, int from, int to)
    {
        var task = order[from];
        if (from < to)
        {
            Array.Copy(order, from + 1, order, from, to - from);
        }
        else
        {
            Array.Copy(order, to, order, to + 1, from - to);
        }

        order[to] = task;
    }

    /// <summary>Follows an order from the first visit that changed, and no further than it can still be better.</summary>
    private sealed class Search(GridProblem problem, int count, long visits)
    {
        private readonly GridCourse.State[] states = new GridCourse.State[count + 1];

        public long VisitsLeft { get; private set; } = visits;

        /// <summary>Takes every better neighbour until there is none.</summary>
        public GridCost Descend(int[] order)
        {
            states[0] = GridCourse.Begin(problem);
            Keep(order, 0);
            for (var isBetter = true; isBetter; )
            {
                isBetter = false;
                for (var from = 0; from < order.Length; from++)
                {
                    for (var to = 0; to < order.Length && VisitsLeft > 0; to++)
                    {
                        if (from == to)
                        {
                            continue;
                        }

                        Move(order, from, to);
                        if (IsBetter(order, Math.Min(from, to)))
                        {
                            isBetter = true;
                            continue;
                        }

                        Move(order, to, from);
                        (order[from], order[to]) = (order[to], order[from]);
                        if (from < to && IsBetter(order, from))
                        {
                            isBetter = true;
                            continue;
                        }

                        (order[from], order[to]) = (order[to], order[from]);
                    }
                }
            }

            return states[^1].Cost;
        }

        private bool IsBetter(int[] order, int first)
        {
            var (state, end) = (states[first], states[^1].Cost);
            for (var i = first; i < order.Length; i++)
            {
                VisitsLeft--;
                state = state.With(problem, order[i], out _);
                if (!state.Cost.IsBelow(end))
                {
                    return false;
                }
            }

            Keep(order, first);
            return true;
        }

        private void Keep(int[] order, int first)
        {
            for (var i = first; i < order.Length; i++)
            {
                states[i + 1] = states[i].With(problem, order[i], out _);
            }
        }
    }
}
