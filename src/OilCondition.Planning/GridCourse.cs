namespace OilCondition.Planning;

/// <summary>What an order of visits comes to: the one place where begins, ends and lateness are computed.</summary>
/// <remarks>
/// Each visit begins as early as it can. An end never falls when a begin rises, so that this is the best timing of an order for every visit at once.
/// </remarks>
internal sealed class GridCourse
{
    private GridCourse(IReadOnlyList<GridVisit> visits, IReadOnlyList<int> leftOut, GridCost cost)
    {
        Visits = visits;
        LeftOut = leftOut;
        Cost = cost;
    }

    public IReadOnlyList<GridVisit> Visits { get; }

    /// <summary>Tasks for which no begin was left.</summary>
    public IReadOnlyList<int> LeftOut { get; }

    public GridCost Cost { get; }

    /// <summary>Follows an order; a task for which no begin is left is left out, and a latest end may be passed.</summary>
    public static GridCourse Of(GridProblem problem, IReadOnlyList<int> order)
    {
        var visits = new List<GridVisit>();
        var leftOut = new List<int>();
        var cost = Follow(problem, order, visits, leftOut);
        return new GridCourse(visits, leftOut, cost);
    }

    /// <summary>What an order costs, and nothing else: a search asks this many thousand times.</summary>
    public static GridCost CostOf(GridProblem problem, IReadOnlyList<int> order) =>
        Follow(problem, order, visits: null, leftOut: null);

    private static GridCost Follow(
        GridProblem problem,
        IReadOnlyList<int> order,
        List<GridVisit>? visits,
        List<int>? leftOut
    )
    {
        var (before, free) = (-1, problem.Free);
        var missed = 0;
        long late = 0;
        long over = 0;
        for (var i = 0; i < order.Count; i++)
        {
            var task = order[i];
            if (Next(problem, before, free, task) is not { } visit)
            {
                missed++;
                leftOut?.Add(task);
                continue;
            }

            visits?.Add(visit);
            (before, free) = (task, visit.DisconnectEnd);
            late += WeightedLateness(problem.Tasks[task], visit.ProcessEnd);
            over += Overshoot(problem.Tasks[task], visit.DisconnectEnd);
        }

        return new GridCost(missed, over, late, free);
    }

    /// <summary>The earliest visit of a task by a unit that is free at a step; null where no begin is left.</summary>
    public static GridVisit? Next(GridProblem problem, int before, long free, int task)
    {
        var what = problem.Tasks[task];
        var length = problem.Travel(before, task);
        if (
            problem.Leave(free, length) is not { } leave
            || what.Starts.Earliest(leave + length, 1) is not { } start
            || what.DisconnectStart(start + what.ToProcessEnd) is not { } off
        )
        {
            return null;
        }

        return new GridVisit(
            task,
            before,
            leave,
            leave + length,
            start,
            start + what.ToProcessEnd,
            off,
            off + what.Disconnect
        );
    }

    public static long WeightedLateness(GridTask task, long processEnd) =>
        task.Weight * Math.Max(0, processEnd - task.Due);

    public static long Overshoot(GridTask task, long end) => Math.Max(0, end - (task.LatestEnd ?? end));
}
