using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The records of one machine's oil, as <c>OilHistory.ToJson</c> writes and <c>OilHistory.Parse</c> reads them.</summary>
public sealed class HistoryDocument : ContractDocument
{
    /// <summary>The machine.</summary>
    [JsonRequired]
    public HistoryMachineData Machine { get; set; } = new();

    /// <summary>Laboratory samples.</summary>
    public IReadOnlyList<SampleData>? Samples { get; set; }

    /// <summary>Sensor readings.</summary>
    public IReadOnlyList<SensorReadingData>? SensorReadings { get; set; }

    /// <summary>What was done to the oil.</summary>
    public IReadOnlyList<EventData>? Events { get; set; }

    /// <summary>What was wrong with the records. Left out for raw records, which are then put in order; with it they are taken as they are.</summary>
    public IReadOnlyList<IssueData>? Issues { get; set; }
}
