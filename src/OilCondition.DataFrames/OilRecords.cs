using Microsoft.Data.Analysis;
using OilCondition.LabFiles;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Samples and sensor readings of any number of machines on their way into a data frame, or out of one.</summary>
/// <remarks>
/// Long, a row is one reading; wide, it is one record with a column for each measurand. Both hold all of it: qualifiers, methods, texts, the
/// offset of each moment, and keys to machine, charge, sample and line of the file. Read back they give the same records, to the tick and digit.
/// docs/frames.md has the columns.
/// </remarks>
/// <example>
/// <code>
/// var readings = OilRecords.Of(history).ToLongFrame();
/// var records = OilRecords.FromLong(readings); // records.Problems, records.SamplesOf("M1")
/// </code>
/// </example>
public sealed class OilRecords
{
    private readonly List<FrameRecord> records;
    private readonly Lazy<ILookup<string, FrameRecord>> ofMachine;

    internal OilRecords(
        List<FrameRecord> records,
        IReadOnlyList<FrameProblem>? problems = null,
        IReadOnlyList<string>? otherColumns = null
    )
    {
        this.records = records;
        ofMachine = new Lazy<ILookup<string, FrameRecord>>(() =>
            records.ToLookup(record => record.MachineId, StringComparer.Ordinal)
        );
        Problems = problems ?? [];
        OtherColumns = otherColumns ?? [];
    }

    /// <summary>What of the frame was not taken over, in order of its rows; none where the records come from elsewhere.</summary>
    public IReadOnlyList<FrameProblem> Problems { get; }

    /// <summary>Columns of the frame that have no meaning here, such as those that an analyst added; they were not read.</summary>
    public IReadOnlyList<string> OtherColumns { get; }

    /// <summary>The machines, in order of appearance.</summary>
    public IReadOnlyList<string> MachineIds => [.. ofMachine.Value.Select(machine => machine.Key)];

    /// <summary>The records of one history, each with the oil charge that it belongs to.</summary>
    /// <param name="history">The history.</param>
    /// <returns>Samples, then sensor readings, in order of time.</returns>
    public static OilRecords Of(OilHistory history) => Of([Guard.NotNull(history)]);

    /// <summary>The records of several machines, each with the oil charge that it belongs to.</summary>
    /// <param name="fleet">The histories.</param>
    /// <returns>Machine by machine samples, then sensor readings, in order of time.</returns>
    public static OilRecords Of(IEnumerable<OilHistory> fleet) =>
        new([.. Guard.NotNull(fleet).SelectMany(RecordsOfHistory.Of)]);

    /// <summary>The samples of a laboratory file that was read as a whole; their lines are not known.</summary>
    /// <param name="file">What was read. <see cref="FileAccount"/> keeps the lines.</param>
    /// <returns>The samples, machine by machine.</returns>
    public static OilRecords Of(LabFileResult file) =>
        new([
            .. Guard
                .NotNull(file)
                .MachineIds.SelectMany(id =>
                    file.SamplesOf(id).Select(sample => new FrameRecord(id, null, null, null, sample, null))
                ),
        ]);

    /// <summary>The readings of a sensor log that was read as a whole; their lines and texts are not known.</summary>
    /// <param name="file">What was read. <see cref="FileAccount"/> keeps lines and texts of a log that is opened.</param>
    /// <returns>The readings, machine by machine; of a log that names no machine under the empty name.</returns>
    public static OilRecords Of(SensorLogResult file) =>
        new([
            .. Guard
                .NotNull(file)
                .MachineIds.SelectMany(id =>
                    file.ReadingsOf(id).Select(reading => new FrameRecord(id, null, null, null, null, reading))
                ),
        ]);

    /// <summary>Reads a long frame, a row a reading.</summary>
    /// <remarks>
    /// Needed are <c>machine</c>, <c>atUtc</c>, <c>measurand</c> and <c>value</c>. Rows of one machine, origin, sample number, moment and line are one
    /// record; a measurand that comes again in it begins another report of it. A bad cell costs its reading, or its row where a key is bad.
    /// </remarks>
    /// <param name="frame">The frame.</param>
    /// <param name="catalog">The measurands that may be named; null for the built-in ones.</param>
    /// <returns>Records in order of the frame, and problems.</returns>
    /// <exception cref="FormatException">Columns are missing or of another type: all of them are named.</exception>
    public static OilRecords FromLong(DataFrame frame, MeasurandCatalog? catalog = null) =>
        LongReader.Read(Guard.NotNull(frame), catalog ?? MeasurandCatalog.BuiltIn);

    /// <summary>Reads a wide frame, a row a record: columns such as <c>water-content [mg/kg]</c>.</summary>
    /// <remarks>
    /// Needed are <c>machine</c> and <c>atUtc</c>. Frames under other headers or in other units go through <see cref="FrameExtensions.ToTableSheet"/> and
    /// <see cref="LabFile"/>, which know what laboratories write.
    /// </remarks>
    /// <param name="frame">The frame.</param>
    /// <param name="catalog">The measurands that may be named; null for the built-in ones.</param>
    /// <returns>Records in order of the frame, and problems.</returns>
    /// <exception cref="FormatException">Columns are missing, of another type or in another unit: all of them are named.</exception>
    public static OilRecords FromWide(DataFrame frame, MeasurandCatalog? catalog = null) =>
        WideReader.Read(Guard.NotNull(frame), catalog ?? MeasurandCatalog.BuiltIn);

    /// <summary>The samples of a machine.</summary>
    /// <param name="machineId">The machine's id.</param>
    /// <returns>The samples in their order; none for a machine that has none.</returns>
    public IReadOnlyList<OilSample> SamplesOf(string machineId) =>
        [.. ofMachine.Value[Guard.NotNull(machineId)].Where(one => one.Sample is not null).Select(one => one.Sample!)];

    /// <summary>The sensor readings of a machine.</summary>
    /// <param name="machineId">The machine's id.</param>
    /// <returns>The readings in their order; none for a machine that has none.</returns>
    public IReadOnlyList<SensorReading> SensorReadingsOf(string machineId) =>
        [.. ofMachine.Value[Guard.NotNull(machineId)].Where(one => one.Sensor is not null).Select(one => one.Sensor!)];

    /// <summary>A row for each reading and each text; one row for a record that has neither.</summary>
    /// <returns>A new frame.</returns>
    public DataFrame ToLongFrame() => RecordFrames.Long(records);

    /// <summary>A row for each record, with a column for each measurand and each text that any of them has.</summary>
    /// <returns>A new frame.</returns>
    /// <exception cref="InvalidOperationException">Measurands of one id have readings in several units: all of them are named.</exception>
    public DataFrame ToWideFrame() => RecordFrames.Wide(records);

    /// <summary>How many there are.</summary>
    /// <returns>For example <c>96 records of 6 machines, 2 problems</c>.</returns>
    public override string ToString() =>
        $"{records.Count} records of {ofMachine.Value.Count} machines, {Problems.Count} problems";
}
