namespace OilCondition.Planning;

/// <summary>An order of visits with its times: where the one mobile unit goes next, and when.</summary>
/// <remarks>
/// Every visit begins as early as the order allows. Least first is the weighted lateness, Σ weight · max(0, end of treatment − due) in hours, then the hours
/// until the unit is free. The plan is advice: people decide, and keep to permits, makers' limits and the plant's rules.
/// </remarks>
/// <example>
/// <code>
/// var asOf = new DateTimeOffset(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);
/// var unit = new MobileUnit("VDU-1", "workshop", new TravelTimes([("workshop", "hall", TimeSpan.FromHours(2))]));
/// var task = new UnitTask("HP-TGB1", "hall", asOf, asOf.AddDays(3), TimeSpan.FromHours(30), weight: 5);
/// var outcome = UnitSchedule.Plan([task], unit, new SchedulingOptions(asOf));
/// </code>
/// </example>
public sealed class UnitSchedule
{
    internal UnitSchedule(GridProblem problem, GridCourse course)
    {
        Problem = problem;
        Course = course;
        var visits = new List<UnitVisit>();
        if (problem is { Running: { } at, Unit.Running.Task: { } task })
        {
            visits.Add(
                new UnitVisit(
                    task,
                    true,
                    problem.Unit.Place,
                    at,
                    problem.Grid,
                    problem.Grid.Down(task.Due),
                    WaitReason.None
                )
            );
        }

        foreach (var visit in course.Visits)
        {
            var what = problem.Tasks[visit.Task];
            visits.Add(
                new UnitVisit(
                    what.Task,
                    false,
                    problem.PlaceOf(visit.Before),
                    visit,
                    problem.Grid,
                    what.Due,
                    Waiting.ReasonOf(problem, visit)
                )
            );
        }

        Visits = visits;
        LeftOut = [.. course.LeftOut.Select(one => problem.Tasks[one].Task)];
    }

    /// <summary>The visits in their order; one under way comes first.</summary>
    public IReadOnlyList<UnitVisit> Visits { get; }

    /// <summary>Tasks that have no place in this order; empty in a plan that fits.</summary>
    public IReadOnlyList<UnitTask> LeftOut { get; }

    /// <summary>Where the unit goes next; null where nothing is left to visit.</summary>
    public UnitVisit? Next => Visits.FirstOrDefault(visit => !visit.IsRunning);

    /// <summary>Sum of weight times hours after the risk date, of all visits but the one under way.</summary>
    public double WeightedLatenessHours => Problem.WeightedHours(Course.Cost.Lateness);

    /// <summary>From the moment of the plan until the unit is free of the last visit: travel, work and waiting.</summary>
    public TimeSpan UnitHours => Problem.Grid.Span(Course.Cost.Free);

    internal GridProblem Problem { get; }

    internal GridCourse Course { get; }

    /// <summary>Plans the visits of the one mobile unit.</summary>
    /// <param name="tasks">Machines to be treated, each id once, at most 200; their order does not matter.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="options">Moment of the plan, time grid and effort.</param>
    /// <returns>A plan with how far it can be from the best, or why the tasks do not fit.</returns>
    /// <exception cref="ArgumentException">An id comes twice, a travel time is missing, or a visit under way cannot be disconnected in any crew hours.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are more than 200 tasks.</exception>
    public static ScheduleOutcome Plan(IReadOnlyList<UnitTask> tasks, MobileUnit unit, SchedulingOptions options) =>
        Planner.Plan(tasks, unit, options);

    /// <summary>One line a machine, six hours a letter: <c>t</c> travel, <c>c</c> connected, not treating, <c>P</c> treatment, <c>w</c> waiting, <c>-</c> machine closed, <c>x</c> unit unavailable.</summary>
    /// <returns>Text of at most 100 columns, twenty days a block.</returns>
    public string ToCalendar() => ScheduleCalendar.Of(this);

    /// <inheritdoc/>
    public override string ToString() => ScheduleTable.Of(this);
}
