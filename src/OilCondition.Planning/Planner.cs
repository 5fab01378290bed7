using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>Rules, improvement, solver and proof, one after another.</summary>
internal static class Planner
{
    private const int MostTasks = 200;

    private const double Least = 0.02;

    public static ScheduleOutcome Plan(IReadOnlyList<UnitTask> tasks, MobileUnit unit, SchedulingOptions options)
    {
        Check(tasks, unit, options);
        var problem = new GridProblem(tasks, unit, options);
        var byUrgency = GridCourse.Of(problem, DispatchRules.ByUrgency(problem));
        var byDueDate = GridCourse.Of(problem, DispatchRules.ByDueDate(problem));
        var rule = byDueDate.Cost.IsBelow(byUrgency.Cost) ? byDueDate : byUrgency;
        // All orders of a few machines are followed anyway.
        var effort = tasks.Count <= OrderEnumeration.AlwaysComplete ? Math.Min(options.Effort, Least) : options.Effort;
        var known = GridCourse.Of(problem, OrderImprover.Improve(problem, OrderOf(rule), effort));
        var alone = Misfits.Alone(problem);
        var search = new PlanSearch(problem, known, options.Effort);
        if (options.Effort > 0)
        {
            search.Run(isRelaxed: alone.Count > 0 || !known.Cost.Fits);
        }

        var best = new UnitSchedule(problem, search.Best);
        var (urgency, due) = (new UnitSchedule(problem, byUrgency), new UnitSchedule(problem, byDueDate));
        if (alone.Count > 0)
        {
            return new ScheduleOutcome.DoesNotFit(alone, isProven: true, best, urgency, due);
        }

        if (!search.Best.Cost.Fits)
        {
            return new ScheduleOutcome.DoesNotFit(
                Misfits.Together(problem, search.Best),
                search.IsShortfallProven,
                best,
                urgency,
                due
            );
        }

        return new ScheduleOutcome.Planned(
            best,
            urgency,
            due,
            problem.WeightedHours(search.Best.Cost.Lateness - search.LatenessBound),
            problem.Grid.Span(search.Best.Cost.Free - search.FreeBound),
            search.IsSearched
        );
    }

    private static void Check(IReadOnlyList<UnitTask> tasks, MobileUnit unit, SchedulingOptions options)
    {
        Guard.NotNull(tasks);
        Guard.NotNull(unit);
        Guard.NotNull(options);
        Guard.InRange(tasks.Count, 0, MostTasks, "tasks", nameof(tasks));
        var seen = new HashSet<string>(StringComparer.Ordinal);
        if (unit.Running is { } running)
        {
            seen.Add(running.Task.Id);
        }

        foreach (var task in tasks)
        {
            if (!seen.Add(Guard.NotNull(task, nameof(tasks)).Id))
            {
                throw new ArgumentException(
                    $"tasks has {task.Id} twice, or it is under way; each machine is planned once.",
                    nameof(tasks)
                );
            }
        }
    }

    private static IReadOnlyList<int> OrderOf(GridCourse course) =>
        [.. course.Visits.Select(visit => visit.Task), .. course.LeftOut];
}
