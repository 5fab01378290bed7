using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <summary>Follows a run reading by reading, in bounded memory, and answers where it stands and when it will be done.</summary>
/// <remarks>
/// Time from the start is divided into cells, <see cref="CleanupMonitorOptions.Spacing"/> wide. Of each cell the first sensor reading, sample and count
/// are kept for the curve, and of all readings whether they were above, at or below the target, or cold. When more than
/// <see cref="CleanupMonitorOptions.MostCells"/> cells have readings, all cells double in width, as often as needed. So at most three readings a cell are
/// kept, and the outcome depends on which readings came, not on their order: one by one, all at once or shuffled end in the same answer.
/// <para>The library never reads a clock: the state is that at the latest reading. One thread at a time.</para>
/// </remarks>
/// <example>
/// <code>
/// var monitor = new CleanupMonitor(CleanupMonitorOptions.WhileWarm(startedAt, target, curve, Elapsed.FromHours(4), warmFrom));
/// monitor.Take(CleanupReading.Sensor(at, Ratio.FromPercent(43.9), Temperature.FromDegreesCelsius(50)));
/// var status = monitor.Status();                 // phase, curve, time to target with its interval
/// </code>
/// </example>
public sealed class CleanupMonitor
{
    private readonly int[] receipts = new int[6];
    private SortedDictionary<long, MonitorCell> cells = [];
    private int coarseness;

    /// <summary>Begins to follow a run.</summary>
    /// <param name="options">Target, holding time, temperature, memory.</param>
    /// <exception cref="ArgumentNullException">There are no options.</exception>
    public CleanupMonitor(CleanupMonitorOptions options) => Options = Guard.NotNull(options);

    /// <summary>What is to be reached.</summary>
    public CleanupMonitorOptions Options { get; }

    /// <summary>Readings kept for the curve at present; never more than three times <see cref="CleanupMonitorOptions.MostCells"/>.</summary>
    public int KeptCount =>
        cells.Values.Sum(cell =>
            (cell.Sensor is null ? 0 : 1) + (cell.Sample is null ? 0 : 1) + (cell.Particles is null ? 0 : 1)
        );

    internal IEnumerable<MonitorCell> Cells => cells.Values;

    internal TemperatureTrail Trail { get; } = new();

    /// <summary>Takes a whole log.</summary>
    /// <param name="options">Target, holding time, temperature, memory.</param>
    /// <param name="readings">The readings, in any order.</param>
    /// <returns>A monitor that has taken them one by one.</returns>
    /// <exception cref="ArgumentNullException">An argument or a reading is missing.</exception>
    public static CleanupMonitor Of(CleanupMonitorOptions options, IEnumerable<CleanupReading> readings)
    {
        var monitor = new CleanupMonitor(options);
        foreach (var reading in Guard.NotNull(readings))
        {
            monitor.Take(reading);
        }

        return monitor;
    }

    /// <summary>Takes what a machine's records have of a run, up to a moment: how an assessment follows it.</summary>
    /// <param name="history">The records of the machine.</param>
    /// <param name="run">The run: what it is to bring down, and to which target.</param>
    /// <param name="asOf">The moment up to which records are looked at.</param>
    /// <param name="options">What the run is followed with; null for <see cref="CleanupMonitorOptions.Of"/> run and machine.</param>
    /// <returns>A monitor that has taken <see cref="CleanupReading.Of"/> these records.</returns>
    /// <exception cref="ArgumentNullException">History or run is missing.</exception>
    public static CleanupMonitor Of(
        OilHistory history,
        TreatmentRun run,
        DateTimeOffset asOf,
        CleanupMonitorOptions? options = null
    ) =>
        Of(
            options ?? CleanupMonitorOptions.Of(run, Guard.NotNull(history).Machine),
            CleanupReading.Of(history, run, asOf)
        );

    /// <summary>How many readings were treated in a way.</summary>
    /// <param name="receipt">The way.</param>
    /// <returns>Their number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such way.</exception>
    public int CountOf(ReadingReceipt receipt) =>
        receipts[(int)Guard.InRange((int)receipt, 0, receipts.Length - 1, "", nameof(receipt))];

    /// <summary>Takes a reading.</summary>
    /// <param name="reading">The reading.</param>
    /// <returns>What was done with it.</returns>
    /// <exception cref="ArgumentNullException">There is no reading.</exception>
    public ReadingReceipt Take(CleanupReading reading)
    {
        Guard.NotNull(reading);
        var receipt = Taken(reading);
        receipts[(int)receipt]++;
        return receipt;
    }

    /// <summary>Where the run stands at the latest reading.</summary>
    /// <param name="confidence">Confidence level of all intervals, above 0 and below 1.</param>
    /// <returns>The state.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside its range.</exception>
    public CleanupStatus Status(double confidence = 0.9) => new(this, Guard.OpenUnitInterval(confidence));

    /// <summary>What is followed, and how much of it is kept.</summary>
    /// <returns>For example <c>water content 60 mg/kg for 6 h, from 45 °C on; 121 readings kept</c>.</returns>
    public override string ToString() => $"{Options}; {KeptCount} readings kept";

    private ReadingReceipt Taken(CleanupReading reading)
    {
        if (reading.At < Options.StartedAt)
        {
            return ReadingReceipt.BeforeStart;
        }

        var isEarlier = Trail.HasReadings && reading.At < Trail.Latest;
        Trail.Take(reading, Options);
        var key =
            (reading.At - Options.StartedAt).Ticks
            / (long)Math.Round(Options.Spacing.TotalHours * TimeSpan.TicksPerHour);
        key >>= coarseness;
        if (!cells.TryGetValue(key, out var cell))
        {
            cell = new MonitorCell();
            cells.Add(key, cell);
        }

        var alone = new MonitorCell();
        TargetMarks.Mark(alone, reading, Options);
        var receipt = ReceiptOf(cell, reading, isEarlier);
        cell.Merge(alone);
        while (cells.Count > Options.MostCells)
        {
            Coarsen();
        }

        return receipt;
    }

    private static ReadingReceipt ReceiptOf(MonitorCell cell, CleanupReading reading, bool isEarlier)
    {
        var kept = reading.Source switch
        {
            ReadingSource.Sensor => cell.Sensor,
            ReadingSource.Sample => cell.Sample,
            _ when reading.Particles is not null => cell.Particles,
            _ => null,
        };
        return kept is null || kept.At > reading.At
            ? isEarlier
                ? ReadingReceipt.TakenOutOfOrder
                : ReadingReceipt.Taken
            : kept.At < reading.At
                ? ReadingReceipt.Thinned
                : kept == reading
                    ? ReadingReceipt.Duplicate
                    : ReadingReceipt.Conflicting;
    }

    private void Coarsen()
    {
        coarseness++;
        var wider = new SortedDictionary<long, MonitorCell>();
        foreach (var pair in cells)
        {
            if (!wider.TryGetValue(pair.Key >> 1, out var cell))
            {
                wider.Add(pair.Key >> 1, pair.Value);
            }
            else
            {
                cell.Merge(pair.Value);
            }
        }

        cells = wider;
    }
}
