using OilCondition.Text;

namespace OilCondition;

/// <summary>Something wrong with the records of a machine, and what it was about.</summary>
public sealed class HistoryIssue
{
    internal HistoryIssue(
        HistoryIssueKind kind,
        DateTimeOffset at,
        string sampleNumber,
        IReadOnlyDictionary<Measurand, Reading> readings,
        IReadOnlyDictionary<string, string> texts
    )
    {
        Kind = kind;
        At = at;
        SampleNumber = sampleNumber;
        Readings = readings;
        Texts = texts;
    }

    internal HistoryIssue(
        HistoryIssueKind kind,
        OilSample sample,
        IReadOnlyDictionary<Measurand, Reading>? readings = null
    )
        : this(kind, sample.TakenAt, sample.SampleNumber, readings ?? sample.Readings, sample.Texts) { }

    internal HistoryIssue(
        HistoryIssueKind kind,
        SensorReading row,
        IReadOnlyDictionary<Measurand, Reading>? readings = null
    )
        : this(kind, row.At, "", readings ?? row.Readings, OilSample.NoTexts) { }

    /// <summary>What is wrong.</summary>
    public HistoryIssueKind Kind { get; }

    /// <summary>When the sample was taken or the sensor read.</summary>
    public DateTimeOffset At { get; }

    /// <summary>The laboratory's number; empty for a sensor reading.</summary>
    public string SampleNumber { get; }

    /// <summary>The readings concerned, so that nothing is lost.</summary>
    public IReadOnlyDictionary<Measurand, Reading> Readings { get; }

    /// <summary>What the laboratory wrote besides on the report concerned, by the header it stood under; empty for a sensor reading.</summary>
    public IReadOnlyDictionary<string, string> Texts { get; }

    /// <summary>What is wrong, with what, and when.</summary>
    /// <returns>For example <c>suspect sample: S9 of 2025-10-03 (2 readings)</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Spaced(Kind)}: {(SampleNumber.Length == 0 ? "sensor" : SampleNumber)} of {PlainText.Date(At)} ({Readings.Count} readings)";
}
