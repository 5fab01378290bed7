using OilCondition.Text;

namespace OilCondition;

/// <summary>Something wrong with the records of a machine, and what it was about.</summary>
public sealed class HistoryIssue
{
    internal HistoryIssue(
        HistoryIssueKind kind,
        DateTimeOffset at,
        string sampleNumber,
        IReadOnlyDictionary<Measurand, Reading> readings
    )
    {
        Kind = kind;
        At = at;
        SampleNumber = sampleNumber;
        Readings = readings;
    }

    /// <summary>What is wrong.</summary>
    public HistoryIssueKind Kind { get; }

    /// <summary>When the sample was taken or the sensor read.</summary>
    public DateTimeOffset At { get; }

    /// <summary>The laboratory's number; empty for a sensor reading.</summary>
    public string SampleNumber { get; }

    /// <summary>The readings concerned, so that nothing is lost.</summary>
    public IReadOnlyDictionary<Measurand, Reading> Readings { get; }

    /// <summary>What is wrong, with what, and when.</summary>
    /// <returns>For example <c>suspect sample: S9 of 2025-10-03 (2 readings)</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Spaced(Kind)}: {(SampleNumber.Length == 0 ? "sensor" : SampleNumber)} of {PlainText.Date(At)} ({Readings.Count} readings)";
}
