using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>Finds the machines that do not fit, and says by how much.</summary>
internal static class Misfits
{
    /// <summary>Machines that would not fit if the unit had nothing else to do.</summary>
    public static IReadOnlyList<Misfit> Alone(GridProblem problem) =>
        [.. Enumerable.Range(0, problem.Tasks.Count).Select(task => Alone(problem, task)).OfType<Misfit>()];

    /// <summary>Machines that a course leaves out or ends too late.</summary>
    public static IReadOnlyList<Misfit> Together(GridProblem problem, GridCourse course)
    {
        var late = course
            .Visits.Select(visit =>
                (problem.Tasks[visit.Task], GridCourse.Overshoot(problem.Tasks[visit.Task], visit.DisconnectEnd))
            )
            .Where(one => one.Item2 > 0)
            .Select(one =>
            {
                var over = problem.Grid.Span(one.Item2);
                return new Misfit(
                    one.Item1.Task,
                    MisfitReason.Together,
                    over,
                    $"with the other machines it ends {Misfit.Hours(over)} after its latest end"
                );
            });
        var leftOut = course.LeftOut.Select(index =>
        {
            var task = problem.Tasks[index];
            var before = course.Visits.Count == 0 ? -1 : course.Visits[^1].Task;
            var arrive = course.Cost.Free + problem.Travel(before, index);
            var over = problem.Grid.Span(Math.Max(1, arrive - LastStart(task)));
            return new Misfit(
                task.Task,
                MisfitReason.Together,
                over,
                $"no place is left: after the other machines the unit arrives {Misfit.Hours(over)} after its last possible begin"
            );
        });
        return [.. late.Concat(leftOut).OrderBy(one => one.Task.Id, StringComparer.Ordinal)];
    }

    private static Misfit? Alone(GridProblem problem, int index)
    {
        var task = problem.Tasks[index];
        if (task.Starts.IsEmpty)
        {
            return NoStart(problem, task);
        }

        var arrive = problem.Free + problem.ShortestWay(index);
        if (task.Starts.Earliest(arrive, 1) is not { } start)
        {
            return Of(
                problem,
                task,
                MisfitReason.Unreachable,
                arrive - LastStart(task),
                $"the unit is there {PlainText.Time(problem.Grid.Moment(arrive))} at the earliest, its last possible begin is {PlainText.Time(problem.Grid.Moment(LastStart(task)))}"
            );
        }

        // A begin that was found has crew hours to disconnect.
        var end = task.DisconnectStart(start + task.ToProcessEnd)!.Value + task.Disconnect;
        return task.LatestEnd is { } latest && end > latest
            ? Of(
                problem,
                task,
                MisfitReason.LatestEnd,
                end - latest,
                $"it ends {PlainText.Time(problem.Grid.Moment(end))} at the earliest, its latest end is {PlainText.Time(problem.Grid.Moment(latest))}"
            )
            : null;
    }

    private static Misfit NoStart(GridProblem problem, GridTask task)
    {
        var needs = Misfit.Hours(problem.Grid.Span(task.Least));
        var ahead = task.Windows.And(new Stretches([(task.Release, problem.Horizon)]));
        if (ahead.Longest < task.Least)
        {
            return Of(
                problem,
                task,
                MisfitReason.WindowTooShort,
                task.Least - ahead.Longest,
                ahead.IsEmpty
                    ? $"needs {needs}, no window is left"
                    : $"needs {needs}, its longest window is {Misfit.Hours(problem.Grid.Span(ahead.Longest))}"
            );
        }

        var both = ahead.And(problem.UnitHours).Longest;
        if (both < task.Least)
        {
            return Of(
                problem,
                task,
                MisfitReason.UnitAwayTooOften,
                task.Least - both,
                $"needs {needs}, the longest stretch with both machine and unit available is {Misfit.Hours(problem.Grid.Span(both))}"
            );
        }

        var manned = Math.Max(task.Task.IsAttended ? task.ToProcessEnd : task.Connect, task.Disconnect);
        var shift = problem.Crew.Longest;
        return shift < manned
            ? Of(
                problem,
                task,
                MisfitReason.CrewHours,
                manned - shift,
                $"needs hands for {Misfit.Hours(problem.Grid.Span(manned))} without a break, the longest crew hours are {Misfit.Hours(problem.Grid.Span(shift))}"
            )
            : new Misfit(
                task.Task,
                MisfitReason.CrewHours,
                null,
                $"needs {needs}; no crew hours let it be connected and disconnected within one window"
            );
    }

    private static Misfit Of(GridProblem problem, GridTask task, MisfitReason reason, long shortBy, string text)
    {
        var span = problem.Grid.Span(shortBy);
        return new Misfit(task.Task, reason, span, $"{text}: {Misfit.Hours(span)} {Word(reason)}");
    }

    private static string Word(MisfitReason reason) =>
        reason is MisfitReason.LatestEnd or MisfitReason.Unreachable ? "too late" : "short";

    private static long LastStart(GridTask task) => task.Starts.Parts[^1].To - 1;
}
