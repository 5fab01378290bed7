namespace OilCondition.Planning;

/// <summary>
/// Improves an order by moving one visit or swapping two, then shakes it and improves again. It proves nothing: it gives the solver an order to begin with.
/// </summary>
internal static class OrderImprover
{
    private const int Seed = 20260302;

    /// <summary>Orders that are tried for each unit of effort.</summary>
    private const int TriesPerEffort = 20_000;

    public static IReadOnlyList<int> Improve(GridProblem problem, IReadOnlyList<int> order, double effort)
    {
        if (order.Count < 2)
        {
            return order;
        }

        var random = new Random(Seed);
        var tries = new Tries((int)(TriesPerEffort * effort));
        var best = order.ToArray();
        var bestCost = Descend(problem, best, tries);
        while (tries.Left > 0)
        {
            var other = best.ToArray();
            for (var shake = 0; shake < 3; shake++)
            {
                Move(other, random.Next(other.Length), random.Next(other.Length));
            }

            var cost = Descend(problem, other, tries);
            if (!bestCost.IsBelow(cost))
            {
                (best, bestCost) = (other, cost);
            }
        }

        return best;
    }

    /// <summary>Takes every better neighbour until there is none.</summary>
    private static GridCost Descend(GridProblem problem, int[] order, Tries tries)
    {
        var cost = GridCourse.CostOf(problem, order);
        var isBetter = true;
        while (isBetter)
        {
            isBetter = false;
            for (var from = 0; from < order.Length; from++)
            {
                for (var to = 0; to < order.Length; to++)
                {
                    if (from == to)
                    {
                        continue;
                    }

                    if (tries.Left <= 0)
                    {
                        return cost;
                    }

                    tries.Left -= 2;
                    Move(order, from, to);
                    var moved = GridCourse.CostOf(problem, order);
                    if (moved.IsBelow(cost))
                    {
                        (cost, isBetter) = (moved, true);
                        continue;
                    }

                    Move(order, to, from);
                    (order[from], order[to]) = (order[to], order[from]);
                    var swapped = GridCourse.CostOf(problem, order);
                    if (swapped.IsBelow(cost))
                    {
                        (cost, isBetter) = (swapped, true);
                        continue;
                    }

                    (order[from], order[to]) = (order[to], order[from]);
                }
            }
        }

        return cost;
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

    private sealed class Tries(int left)
    {
        public int Left { get; set; } = left;
    }
}
