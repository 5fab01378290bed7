namespace OilCondition.DataFrames;

/// <summary>What the rows of one record have in common.</summary>
internal readonly record struct RecordKey(
    string MachineId,
    string? Charge,
    bool IsSensor,
    string? SampleNumber,
    DateTimeOffset At,
    string? Sheet,
    int? Line
)
{
    public FrameRecord With(
        IReadOnlyDictionary<Measurand, Reading> readings,
        IReadOnlyDictionary<string, string> texts
    ) =>
        IsSensor
            ? new FrameRecord(MachineId, Charge, Sheet, Line, null, new SensorReading(At, readings), texts)
            : new FrameRecord(
                MachineId,
                Charge,
                Sheet,
                Line,
                new OilSample(SampleNumber ?? "", At, readings, texts),
                null
            );
}
