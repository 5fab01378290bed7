using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>Volume at the reference temperature over volume at another temperature, which is also density there over reference density.</summary>
public sealed record VolumeCorrectionFactor
{
    internal VolumeCorrectionFactor(double value, bool isExtrapolated)
    {
        Value = Ratio.FromDecimalFractions(value);
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>The factor; below 1 when the oil is warmer than the reference.</summary>
    public Ratio Value { get; }

    /// <summary>Whether density or temperature lies outside the range of the standard.</summary>
    public bool IsExtrapolated { get; }
}
