using UnitsNet;

namespace OilCondition.Water;

/// <summary>The water that an oil holds dissolved, at most, at one temperature.</summary>
public sealed record SaturationPoint
{
    internal SaturationPoint(Temperature temperature, MassFraction content, bool isExtrapolated)
    {
        Temperature = temperature;
        Content = content;
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>Oil temperature.</summary>
    public Temperature Temperature { get; }

    /// <summary>Dissolved water at saturation, mass of water per mass of oil.</summary>
    public MassFraction Content { get; }

    /// <summary>Whether the temperature lies outside the range in which the curve was measured or published.</summary>
    public bool IsExtrapolated { get; }
}
