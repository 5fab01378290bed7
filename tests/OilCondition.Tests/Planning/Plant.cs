using OilCondition.Planning;

namespace OilCondition.Tests.Planning;

/// <summary>Tasks and units in whole hours after a Monday at six, on a grid of one hour.</summary>
internal static class Plant
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    public static readonly SchedulingOptions Hourly = new(Start, TimeSpan.FromHours(1), effort: 1);

    public static DateTimeOffset At(double hours) => Start.AddHours(hours);

    public static WorkWindow Hours(double from, double to) => new(At(from), At(to));

    public static UnitTask Task(
        string id,
        double process,
        double due = 0,
        double weight = 1,
        string place = "hall",
        double release = 0,
        double connect = 0,
        double heatUp = 0,
        double disconnect = 0,
        double? latestEnd = null,
        bool isAttended = false,
        params WorkWindow[] windows
    ) =>
        new(
            id,
            place,
            At(release),
            At(due),
            TimeSpan.FromHours(process),
            weight,
            TimeSpan.FromHours(connect),
            TimeSpan.FromHours(heatUp),
            TimeSpan.FromHours(disconnect),
            latestEnd is { } end ? At(end) : null,
            windows,
            isAttended
        );

    public static MobileUnit Unit(
        IReadOnlyList<WorkWindow>? crewHours = null,
        IReadOnlyList<WorkWindow>? unavailable = null,
        TravelTimes? travel = null,
        double? hiredFrom = null,
        double? hiredUntil = null,
        RunningVisit? running = null
    ) =>
        new(
            "VDU-1",
            "hall",
            travel,
            crewHours,
            unavailable,
            hiredFrom is { } begin ? At(begin) : null,
            hiredUntil is { } end ? At(end) : null,
            running
        );

    public static TravelTimes Travel(params (string From, string To, double Hours)[] legs) =>
        new([.. legs.Select(leg => (leg.From, leg.To, TimeSpan.FromHours(leg.Hours)))]);

    public static ScheduleOutcome.Planned Planned(
        IReadOnlyList<UnitTask> tasks,
        MobileUnit? unit = null,
        SchedulingOptions? options = null
    ) => UnitSchedule.Plan(tasks, unit ?? Unit(), options ?? Hourly).ShouldBeOfType<ScheduleOutcome.Planned>();

    public static ScheduleOutcome.DoesNotFit NoFit(IReadOnlyList<UnitTask> tasks, MobileUnit? unit = null) =>
        UnitSchedule.Plan(tasks, unit ?? Unit(), Hourly).ShouldBeOfType<ScheduleOutcome.DoesNotFit>();

    public static string Order(UnitSchedule schedule) =>
        string.Join(' ', schedule.Visits.Select(visit => visit.Task.Id));
}
