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
        var state = Begin(problem);
        foreach (var task in order)
        {
            state = state.With(problem, task, out var visit);
            if (visit is { } made)
            {
                visits.Add(made);
            }
            else
            {
                leftOut.Add(task);
            }
        }

        return new GridCourse(visits, leftOut, state.Cost);
    }

    /// <summary>Where the unit stands after some visits, and what they cost.</summary>
    public readonly record struct State(int Before, GridCost Cost)
    {
        /// <summary>The same with one more task, which is left out where no begin is left.</summary>
        public State With(GridProblem problem, int task, out GridVisit? visit)
        {
            visit = Next(problem, Before, Cost.Free, task);
            return visit is not { } made
                ? this with
                {
                    Cost = Cost with { LeftOut = Cost.LeftOut + 1 },
                }
                : new State(
                    task,
                    new GridCost(
                        Cost.LeftOut,
                        Cost.Overshoot + Overshoot(problem.Tasks[task], made.DisconnectEnd),
                        Cost.Lateness + WeightedLateness(problem.Tasks[task], made.ProcessEnd),
                        made.DisconnectEnd
                    )
                );
        }
    }

    public static State Begin(GridProblem problem) => new(-1, new GridCost(0, 0, 0, problem.Free));

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
