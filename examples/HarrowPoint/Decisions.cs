using OilCondition;
using OilCondition.Planning;

namespace HarrowPoint;

/// <summary>From findings to decisions: what the invented yard can do about them, which way to take, and where its one mobile unit goes next.</summary>
public static class Decisions
{
    private const string Unit = "HP-VDU";

    public static IReadOnlyList<TreatmentDecision> Of(
        StationRecords station,
        IEnumerable<ConditionAssessment> assessments
    ) => TreatmentDecision.Of([.. assessments], station.Station);

    /// <summary>The unit over the machines whose decisions take it; begun from where it works now.</summary>
    public static ScheduleOutcome Schedule(StationRecords station, IReadOnlyList<TreatmentDecision> decisions)
    {
        var work = UnitTasks.Of(decisions, station.Station, Unit, place: "unit-1");
        return UnitSchedule.Plan(work.Tasks, work.Unit, new SchedulingOptions(station.AsOf));
    }

    /// <summary>The plan of the unit as text, for the console and the report.</summary>
    public static string Calendar(ScheduleOutcome outcome) =>
        outcome is ScheduleOutcome.Planned planned
            ? $"{planned}\n\n{planned.Schedule.ToCalendar()}"
            : outcome.ToString() ?? "";

    public static void Write(TextWriter to, IReadOnlyList<TreatmentDecision> decisions, ScheduleOutcome outcome)
    {
        to.WriteLine();
        to.WriteLine("== Decisions, with what stands in the yard or can be hired");
        foreach (var decision in decisions)
        {
            to.WriteLine();
            to.WriteLine(decision);
        }

        to.WriteLine();
        to.WriteLine("== Where the mobile unit goes next");
        to.WriteLine(Calendar(outcome));
    }
}
