using OilCondition.LabFiles;

namespace OilCondition.DataFrames;

/// <summary>A sample or a sensor's reading of one machine, with where it comes from.</summary>
internal sealed record FrameRecord(
    string MachineId,
    string? Charge,
    string? Sheet,
    int? Line,
    OilSample? Sample,
    SensorReading? Sensor,
    IReadOnlyDictionary<string, string>? SensorTexts = null
)
{
    /// <summary>What <see cref="FrameNames.Origin"/> says.</summary>
    public const string FromSample = "sample";
    public const string FromSensor = "sensor";

    public static readonly IReadOnlyDictionary<string, string> NoTexts = new Dictionary<string, string>();

    /// <summary>The sample of a row of a laboratory file; null where there is none.</summary>
    public static FrameRecord? Of(LabRow row) =>
        row.Sample is { } sample ? new FrameRecord(row.MachineId, null, row.Sheet, row.Line, sample, null) : null;

    /// <summary>The reading of a row of a sensor log; null where there is none.</summary>
    public static FrameRecord? Of(SensorRow row) =>
        row.Reading is { } reading
            ? new FrameRecord(row.MachineId, null, row.Sheet, row.Line, null, reading, row.Texts)
            : null;

    public string Origin => Sample is null ? FromSensor : FromSample;

    public DateTimeOffset At => Sample?.TakenAt ?? Sensor!.At;

    public IReadOnlyDictionary<Measurand, Reading> Readings => Sample?.Readings ?? Sensor!.Readings;

    public IReadOnlyDictionary<string, string> Texts => Sample?.Texts ?? SensorTexts ?? NoTexts;
}
