using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>What a mobile unit is to do by the decisions of a plant: its tasks, and the unit with its ways, crew hours and the visit under way.</summary>
/// <example>
/// <code>
/// var work = UnitTasks.Of(decisions, station, "VDU");
/// var outcome = UnitSchedule.Plan(work.Tasks, work.Unit, new SchedulingOptions(asOf));
/// </code>
/// </example>
public sealed class UnitTasks
{
    /// <summary>A week has each day in it.</summary>
    private const int FewestDays = 7;

    private const int MostDays = 3660;

    private static readonly TimeSpan Shortest = TimeSpan.FromMinutes(1);

    private static readonly TimeSpan Longest = TimeSpan.FromHours(8784);

    private UnitTasks(IReadOnlyList<UnitTask> tasks, MobileUnit unit)
    {
        Tasks = tasks;
        Unit = unit;
    }

    /// <summary>One task for each decision that takes the unit, in the order of the decisions.</summary>
    public IReadOnlyList<UnitTask> Tasks { get; }

    /// <summary>The unit, with the plant's ways and crew hours, and with its visit under way.</summary>
    public MobileUnit Unit { get; }

    /// <summary>Takes from decisions what a unit is to do.</summary>
    /// <remarks>
    /// A decision is a task where its choice binds this unit, alone or in a train, and then for the whole of it. The task is due at the risk date. It takes as long as nine cases in ten need, else half of
    /// them, else one in ten. An hour late counts 3 for an alarm and 1 for an alert (ours). Where the machine must stand, its outages are the windows.
    /// </remarks>
    /// <param name="decisions">The plant's decisions; their moment is the one up to which the plan knows.</param>
    /// <param name="station">The station, with places, ways and crew.</param>
    /// <param name="equipmentId">Identifier of the unit in the station.</param>
    /// <param name="place">Where the unit is now; not asked where the file has no ways, or a visit is under way.</param>
    /// <param name="daysAhead">For how many days crew hours are stated, 7 to 3660; 365 unless stated.</param>
    /// <returns>The tasks and the unit.</returns>
    /// <exception cref="ArgumentException">The station has no such equipment, two visits are under way, or the unit's place is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of days is out of range.</exception>
    public static UnitTasks Of(
        IReadOnlyList<TreatmentDecision> decisions,
        Station station,
        string equipmentId,
        string? place = null,
        int daysAhead = 365
    )
    {
        Guard.NotNull(decisions);
        Guard.NotNull(station);
        Guard.InRange(daysAhead, FewestDays, MostDays, "days");
        var equipment =
            station.Equipment.FirstOrDefault(one => one.Id == Guard.NotNull(equipmentId))
            ?? throw new ArgumentException(
                $"'{equipmentId}' is not the id of equipment; there are: {string.Join(", ", station.Equipment.Select(one => one.Id))}.",
                nameof(equipmentId)
            );
        var ids = new HashSet<string>(StringComparer.Ordinal);
        string IdOf(TreatmentDecision decision)
        {
            var id = decision.Assessment.History.Machine.Id;
            return ids.Add(id) ? id : $"{id} {string.Join(", ", decision.Topics.Select(PlainText.Kebab))}";
        }

        var running = decisions
            .Where(one => one.UnderWay?.Run.Equipment == equipmentId)
            .Select(one => Running(one, IdOf(one), station, equipment.Terms))
            .ToList();
        if (running.Count > 1)
        {
            throw new ArgumentException(
                $"decisions has {equipmentId} under way on {running[0].Task.Id} and on {running[1].Task.Id}; it can be at one machine.",
                nameof(decisions)
            );
        }

        List<UnitTask> tasks =
        [
            .. decisions
                .Where(one => one.Choice?.Equipment.Contains(equipmentId) == true)
                .Select(one => Task(one, IdOf(one), station)),
        ];
        var unit = new MobileUnit(
            equipmentId,
            running.FirstOrDefault()?.Task.Place ?? PlaceOf(station, place),
            new TravelTimes([.. station.Travel.Select(way => (way.From, way.To, way.Time))]),
            decisions.Count == 0
                ? null
                : ShiftsOf(station.Crew, decisions.Max(one => one.Assessment.Options.AsOf), daysAhead),
            running: running.FirstOrDefault()
        );
        return new UnitTasks(tasks, unit);
    }

    /// <summary>The unit and the number of its tasks.</summary>
    /// <returns>For example <c>VDU at hall: 3 tasks</c>.</returns>
    public override string ToString() => $"{Unit}: {Tasks.Count} tasks";

    private static UnitTask Task(TreatmentDecision decision, string id, Station station)
    {
        var option = decision.Choice!;
        var terms = option.Terms!;
        var begins = option.Begins!.Value;
        // Done counts from the begin, with connecting, and with the hours in which nobody stands by.
        var done = (option.DoneP90 ?? option.DoneP50 ?? option.DoneP10)!.Value;
        return new UnitTask(
            id,
            PlaceOf(decision, station),
            begins,
            decision.RiskDate,
            Within(done - begins - terms.ConnectTime),
            WeightOf(decision),
            connect: terms.ConnectTime,
            disconnect: terms.ConnectTime,
            windows: terms.NeedsStandstill
                ? [.. OutagesOf(decision, station).Select(one => new WorkWindow(one.From, one.To))]
                : []
        );
    }

    private static RunningVisit Running(TreatmentDecision decision, string id, Station station, EquipmentTerms terms)
    {
        var underWay = decision.UnderWay!;
        var expected = underWay.Status.Arrival switch
        {
            Arrival<DateTimeOffset>.Expected arrival => arrival.Estimate,
            Arrival<DateTimeOffset>.Already arrival => arrival.At,
            _ => decision.RiskDate,
        };
        var end = expected < underWay.AsOf ? underWay.AsOf : expected;
        var task = new UnitTask(
            id,
            PlaceOf(decision, station),
            underWay.Run.At,
            decision.RiskDate,
            Within(end - underWay.Run.At),
            WeightOf(decision),
            disconnect: terms.ConnectTime
        );
        return new RunningVisit(task, underWay.Run.At, end);
    }

    private static double WeightOf(TreatmentDecision decision) =>
        decision.Problems.Any(one => one.Severity == Severity.Alarm) ? 3 : 1;

    /// <summary>Without ways all machines stand at one place.</summary>
    private static string PlaceOf(TreatmentDecision decision, Station station)
    {
        var id = decision.Assessment.History.Machine.Id;
        return station.Travel.Count == 0 ? station.Name
            : station.TryMachine(id, out var machine) ? machine.Site.Place ?? id
            : id;
    }

    private static string PlaceOf(Station station, string? place) =>
        station.Travel.Count == 0
            ? station.Name
            : place
                ?? throw new ArgumentException(
                    "place is null; state where the unit is, since the station's ways take time.",
                    nameof(place)
                );

    private static IReadOnlyList<Outage> OutagesOf(TreatmentDecision decision, Station station) =>
        station.TryMachine(decision.Assessment.History.Machine.Id, out var machine) ? machine.Site.Outages : [];

    private static List<WorkWindow>? ShiftsOf(Station.CrewHours? crew, DateTimeOffset asOf, int days)
    {
        if (crew is null)
        {
            return null;
        }

        var midnight = new DateTimeOffset(asOf.Date, asOf.Offset);
        return
        [
            .. Enumerable
                .Range(0, days)
                .Select(day => midnight.AddDays(day))
                .Where(day => crew.Days.Contains(day.DayOfWeek))
                .Select(day => new WorkWindow(day + crew.From, day + crew.To)),
        ];
    }

    private static TimeSpan Within(TimeSpan span) =>
        span < Shortest ? Shortest
        : span > Longest ? Longest
        : span;
}
