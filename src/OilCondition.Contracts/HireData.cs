namespace OilCondition.Contracts;

/// <summary>What the hire of a unit costs.</summary>
public sealed class HireData : ContractPart
{
    /// <summary>For each day begun, in the plant's currency.</summary>
    public double? DayRate { get; set; }

    /// <summary>To bring it and take it away.</summary>
    public double? Mobilisation { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
