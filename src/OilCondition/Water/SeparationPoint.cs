using UnitsNet;

namespace OilCondition.Water;

/// <summary>The temperature at which a given water content just saturates an oil: on further cooling, free water appears.</summary>
public sealed record SeparationPoint
{
    internal SeparationPoint(SeparationOutcome outcome, Temperature temperature, bool isExtrapolated)
    {
        Outcome = outcome;
        Temperature = temperature;
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>How <see cref="Temperature"/> is to be read.</summary>
    public SeparationOutcome Outcome { get; }

    /// <summary>The separation temperature, or the end of the range where it lies beyond.</summary>
    public Temperature Temperature { get; }

    /// <summary>Whether the temperature lies outside the range in which the curve was measured or published.</summary>
    public bool IsExtrapolated { get; }
}
