using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The record of one cleanup, as <c>CleanupRecord.ToJson</c> writes it.</summary>
public sealed class CleanupRecordDocument : ContractDocument
{
    /// <summary>The machine, as it was stated.</summary>
    [JsonRequired]
    public string Machine { get; set; } = "";

    /// <summary>How it ended.</summary>
    [JsonRequired]
    [Words(KnownWords.CleanupVerdict)]
    public string Verdict { get; set; } = "";

    /// <summary>Its start.</summary>
    [JsonRequired]
    public DateTimeOffset Start { get; set; }

    /// <summary>Its end.</summary>
    [JsonRequired]
    public DateTimeOffset End { get; set; }

    /// <summary>How long it ran.</summary>
    [JsonRequired]
    public double LengthHours { get; set; }

    /// <summary>Oil temperatures; left out where none was read.</summary>
    public TemperatureData? TemperatureCelsius { get; set; }

    /// <summary>Oil that passed the unit.</summary>
    [JsonRequired]
    public double VolumePassedLitres { get; set; }

    /// <summary>Whether a meter counted it.</summary>
    [JsonRequired]
    public bool VolumeMetered { get; set; }

    /// <summary>How often the charge passed.</summary>
    [JsonRequired]
    public double Turnovers { get; set; }

    /// <summary>The balance of the water.</summary>
    [JsonRequired]
    public CleanupWaterData Water { get; set; } = new();

    /// <summary>ISO 4406 codes; left out where they were not measured.</summary>
    public CodeData? CleanlinessCode { get; set; }

    /// <summary>The curve through the readings.</summary>
    [JsonRequired]
    public FitData Fit { get; set; } = new();

    /// <summary>How long the target has held.</summary>
    [JsonRequired]
    public HoldingData Holding { get; set; } = new();

    /// <summary>That sensor and titrations contradict each other.</summary>
    public WaterContradictionData? Contradiction { get; set; }

    /// <summary>That a part of the target stalls.</summary>
    public StallData? Stall { get; set; }

    /// <summary>Why it stalls, where that was asked.</summary>
    public DiagnosisData? Diagnosis { get; set; }

    /// <summary>What to beware of.</summary>
    [JsonRequired]
    [Words(KnownWords.Caution)]
    public IReadOnlyList<string> Cautions { get; set; } = [];
}
