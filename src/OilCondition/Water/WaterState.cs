using UnitsNet;

namespace OilCondition.Water;

/// <summary>A known total of water in an oil, split at one temperature into what is dissolved and what is free.</summary>
/// <remarks>
/// Dissolved = min(total, S); free = max(0, total − S); headroom = max(0, S − total), with S the content at saturation.
/// Free includes emulsified water: solubility alone cannot tell the two apart.
/// </remarks>
public sealed record WaterState
{
    internal WaterState(MassFraction total, SaturationPoint saturation)
    {
        var totalPpm = total.PartsPerMillion;
        var saturationPpm = saturation.Content.PartsPerMillion;
        Total = total;
        Saturation = saturation;
        Dissolved = MassFraction.FromPartsPerMillion(Math.Min(totalPpm, saturationPpm));
        Free = MassFraction.FromPartsPerMillion(Math.Max(0, totalPpm - saturationPpm));
        Headroom = MassFraction.FromPartsPerMillion(Math.Max(0, saturationPpm - totalPpm));
        RelativeSaturation = Ratio.FromDecimalFractions(Math.Min(1, totalPpm / saturationPpm));
    }

    /// <summary>All water, as a Karl Fischer titration sees it.</summary>
    public MassFraction Total { get; }

    /// <summary>What the oil can hold dissolved at this temperature.</summary>
    public SaturationPoint Saturation { get; }

    /// <summary>Water in solution.</summary>
    public MassFraction Dissolved { get; }

    /// <summary>Water beyond saturation, free or emulsified.</summary>
    public MassFraction Free { get; }

    /// <summary>Water that the oil could still take up before it is saturated.</summary>
    public MassFraction Headroom { get; }

    /// <summary>Dissolved water over saturation, 0 to 1; what a moisture sensor reads. It is 1 whenever free water is present.</summary>
    public Ratio RelativeSaturation { get; }

    /// <summary>Whether there is free or emulsified water.</summary>
    public bool HasFreeWater => Free.PartsPerMillion > 0;
}
