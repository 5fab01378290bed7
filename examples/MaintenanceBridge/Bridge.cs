using OilCondition;

namespace MaintenanceBridge;

/// <summary>Takes records in, assesses the machines that they are of, and keeps records and journal together. One request at a time.</summary>
public sealed class Bridge
{
    private readonly Lock gate = new();
    private readonly BridgeStation station;
    private readonly Store store;
    private readonly TimeProvider clock;
    private readonly Dictionary<string, List<OilSample>> samples = [];
    private readonly Dictionary<string, List<SensorReading>> sensorReadings = [];
    private readonly HashSet<string> known = [];
    private AlertJournal journal;
    private int runs;

    public Bridge(BridgeStation station, Store store, TimeProvider clock)
    {
        (this.station, this.store, this.clock) = (station, store, clock);
        foreach (var received in store.Received())
        {
            Take(received.Id, received.Read());
        }

        (journal, runs) = store.Journal();
    }

    /// <summary>
    /// Now. The demo station tells up to a day of its own, so its runs follow each other from there by seconds; a station file without such a day has
    /// the clock's.
    /// </summary>
    private DateTimeOffset AsOf(int run) => station.Station.AsOf?.AddSeconds(run) ?? clock.GetUtcNow();

    public AlertJournal Journal
    {
        get
        {
            lock (gate)
            {
                return journal;
            }
        }
    }

    /// <summary>Keeps what was received and what follows from it; what came before is answered again and kept once.</summary>
    public ImportResult Import(Received received)
    {
        var records = received.Read();
        var machines = records.MachineIds.Where(id => station.Station.TryMachine(id, out _)).ToList();
        if (machines.Count == 0)
        {
            throw new BadRequestException(
                "None of its machines is in the station file. Where the rows name no machine, state it as the query's machine."
            );
        }

        lock (gate)
        {
            var isNew = !known.Contains(received.Id);
            if (isNew)
            {
                var asOf = AsOf(runs + 1);
                var after = journal.Reconcile(machines.Select(id => Assess(id, records, asOf)));
                store.Keep(received, after, runs + 1);
                (journal, runs) = (after, runs + 1);
                Take(received.Id, records);
            }

            return new ImportResult(
                received.Id,
                isNew,
                records.Samples.Values.Sum(one => one.Count),
                records.SensorReadings.Values.Sum(one => one.Count),
                machines,
                [
                    .. records.Problems,
                    .. records
                        .MachineIds.Except(machines)
                        .Select(id =>
                            $"machine '{id}' is not in the station file; its records are kept and not assessed"
                        ),
                ]
            );
        }
    }

    public ConditionAssessment Assessment(string machineId)
    {
        lock (gate)
        {
            return Assess(machineId, null, AsOf(runs));
        }
    }

    public void Confirm(string changeId, string workOrder) => Change(one => one.Confirm(changeId, workOrder));

    public void Acknowledge(string key, string by, string workOrder) =>
        Change(one => one.Acknowledge(key, by, AsOf(runs), workOrder));

    private void Change(Func<AlertJournal, AlertJournal> change)
    {
        lock (gate)
        {
            var after = change(journal);
            store.Keep(null, after, runs);
            journal = after;
        }
    }

    private ConditionAssessment Assess(string machineId, Records? arriving, DateTimeOffset asOf)
    {
        var machine = station.Machine(machineId);
        var history = machine.History(
            Of(samples, machineId).Concat(arriving?.Samples.GetValueOrDefault(machineId) ?? []),
            Of(sensorReadings, machineId).Concat(arriving?.SensorReadings.GetValueOrDefault(machineId) ?? [])
        );
        return ConditionAssessor.Assess(history, machine.Limits!, new AssessmentOptions(asOf));
    }

    private void Take(string id, Records records)
    {
        known.Add(id);
        Add(samples, records.Samples);
        Add(sensorReadings, records.SensorReadings);
    }

    private static void Add<T>(Dictionary<string, List<T>> to, IReadOnlyDictionary<string, IReadOnlyList<T>> from)
    {
        foreach (var (id, items) in from)
        {
            if (!to.TryGetValue(id, out var list))
            {
                to.Add(id, list = []);
            }

            list.AddRange(items);
        }
    }

    private static List<T> Of<T>(Dictionary<string, List<T>> records, string id) =>
        records.TryGetValue(id, out var found) ? found : [];
}
