namespace OilCondition.Contracts;

/// <summary>What a whole file has in common.</summary>
public sealed class ColumnConstantsData : ContractPart
{
    /// <summary>The machine's id.</summary>
    public string? Machine { get; set; }

    /// <summary>The laboratory's number.</summary>
    public string? SampleNumber { get; set; }

    /// <summary>The date, as the file would write it.</summary>
    public string? TakenAt { get; set; }
}
