using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <summary>A figure that speaks for a cause or a verdict.</summary>
public sealed record StallEvidence
{
    internal StallEvidence(string name, double value, string unit)
    {
        Name = name;
        Value = Guard.Finite(value, unit, name);
        Unit = unit;
    }

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>Its value.</summary>
    public double Value { get; }

    /// <summary>Unit of the value; empty for a plain number.</summary>
    public string Unit { get; }
}
