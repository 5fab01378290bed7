using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>A guide figure for the heat that a tank wall loses.</summary>
public sealed record TankHeatLossGuide
{
    internal TankHeatLossGuide(HeatTransferCoefficient coefficient, bool isExtrapolated)
    {
        Coefficient = coefficient;
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>Heat transfer from oil to surroundings, per area and kelvin.</summary>
    public HeatTransferCoefficient Coefficient { get; }

    /// <summary>Whether the oil is warmer than the 38 °C to which the table goes: the last figure is then used, and is too low.</summary>
    public bool IsExtrapolated { get; }
}
