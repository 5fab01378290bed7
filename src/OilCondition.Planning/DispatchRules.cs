namespace OilCondition.Planning;

/// <summary>Plain priority rules: orders that a planner could make by hand.</summary>
internal static class DispatchRules
{
    /// <summary>How far ahead the urgency rule looks, in mean lengths of a visit; 2 is the usual value.</summary>
    private const double LookAhead = 2;

    /// <summary>By due date, then by id.</summary>
    public static IReadOnlyList<int> ByDueDate(GridProblem problem) =>
        [.. Enumerable.Range(0, problem.Tasks.Count).OrderBy(task => problem.Tasks[task].Due)];

    /// <summary>
    /// Whenever the unit is free, the task of the highest index w/a · exp(−max(0, d − c)/(k p̄)): weight w, hours a until it would be done, travel and
    /// waiting among them, end c, due date d, mean length p̄ (Vepsalainen and Morton 1987, apparent tardiness cost, from memory; there a is the length
    /// of the job alone).
    /// </summary>
    public static IReadOnlyList<int> ByUrgency(GridProblem problem)
    {
        var open = Enumerable.Range(0, problem.Tasks.Count).ToList();
        var order = new List<int>();
        var mean = open.Count == 0 ? 1 : open.Average(task => (double)problem.Tasks[task].Least);
        var (before, free) = (-1, problem.Free);
        while (open.Count > 0)
        {
            var (best, visit) = open.Select(task => (Task: task, Visit: GridCourse.Next(problem, before, free, task)))
                .OrderByDescending(next => next.Visit is { } at ? Index(problem.Tasks[next.Task], at, free, mean) : -1)
                .ThenBy(next => problem.Tasks[next.Task].Due)
                .First();
            open.Remove(best);
            order.Add(best);
            if (visit is { } taken)
            {
                (before, free) = (best, taken.DisconnectEnd);
            }
        }

        return order;
    }

    private static double Index(GridTask task, GridVisit visit, long free, double mean) =>
        task.Weight
        / (double)Math.Max(1, visit.ProcessEnd - free)
        * Math.Exp(-Math.Max(0, task.Due - visit.ProcessEnd) / (LookAhead * mean));
}
