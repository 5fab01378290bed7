using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>Heat lost through the walls of a tank.</summary>
/// <remarks>
/// Q = α A ΔT. The guide figures are those of a public table for fuel-oil tanks, given in steps of oil temperature up to 10, 27 and 38 °C;
/// wind, fill level and circulation move them by half and more. Above 38 °C, where warm hydraulic oil lies, they are flagged.
/// Measure a cool-down with the heater off where the figure matters.
/// </remarks>
/// <example>
/// <code>
/// var loss = TankHeatLoss.Guide(TankSurface.ShelteredBare, Temperature.FromDegreesCelsius(27));   // 7.38 W/(m² K)
/// var tank = HeatedTank.FromOil(Mass.FromKilograms(870), heatCapacity, loss.WattPerKelvin(Area.FromSquareMeters(8)));
/// </code>
/// </example>
public sealed record TankHeatLoss
{
    /// <summary>
    /// Rows: oil temperature up to 10, 27, 38 °C. Columns in the order of <see cref="TankSurface"/>: sheltered bare, sheltered insulated,
    /// exposed bare, exposed insulated; Btu/(h ft² °F).
    /// </summary>
    private static readonly double[][] Table =
    [
        [1.2, 0.3, 1.4, 0.35],
        [1.3, 0.33, 1.5, 0.38],
        [1.4, 0.35, 1.6, 0.4],
    ];

    private TankHeatLoss(HeatTransferCoefficient coefficient, bool isExtrapolated)
    {
        Coefficient = coefficient;
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>Where the guide figures come from.</summary>
    public static Source GuideSource { get; } =
        new(SourceKind.Handbook, "public engineering table of heat loss from oil tanks", "sheltered and exposed tanks");

    /// <summary>Heat transfer from oil to surroundings, per area and kelvin, α.</summary>
    public HeatTransferCoefficient Coefficient { get; }

    /// <summary>Whether the oil is warmer than the 38 °C to which the table goes: the last figure is then used, and is too low.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Guide figure for the heat transfer through a tank wall.</summary>
    /// <param name="surface">Where the tank stands and how it is clad.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The guide figure, flagged above 38 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range, or there is no such surface.</exception>
    public static TankHeatLoss Guide(TankSurface surface, Temperature temperature)
    {
        const double Rounding = 1e-9;
        Guard.InRange((int)surface, 0, (int)TankSurface.ExposedInsulated, "(no such surface)", nameof(surface));
        var celsius = OilTemperature.Celsius(temperature) - Rounding;
        var row =
            celsius <= 10 ? 0
            : celsius <= 27 ? 1
            : 2;
        return new TankHeatLoss(
            HeatTransferCoefficient.FromBtusPerHourSquareFootDegreeFahrenheit(Table[row][(int)surface]),
            celsius > 38
        );
    }

    /// <summary>A coefficient that was measured, or that the maker states.</summary>
    /// <param name="coefficient">Heat transfer per area and kelvin, 0 to 1000 W/(m² K).</param>
    /// <returns>The coefficient, not flagged.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The coefficient lies outside its range.</exception>
    public static TankHeatLoss FromCoefficient(HeatTransferCoefficient coefficient)
    {
        Guard.InRange(coefficient.WattsPerSquareMeterKelvin, 0, 1000, "W/(m² K)", nameof(coefficient));
        return new TankHeatLoss(coefficient, isExtrapolated: false);
    }

    /// <summary>Heat lost, α A ΔT.</summary>
    /// <param name="area">Area that loses heat, 0 or more.</param>
    /// <param name="difference">Oil temperature less that of the surroundings; negative where the oil is colder and takes up heat.</param>
    /// <returns>The loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Power Loss(Area area, TemperatureDelta difference) =>
        Power.FromWatts(WattPerKelvin(area) * Guard.InRange(difference.Kelvins, -260, 260, "K", nameof(difference)));

    /// <summary>Loss per kelvin, α A, for <see cref="HeatedTank"/>; add the parts of a tank that differ.</summary>
    /// <param name="area">Area that loses heat, 0 or more.</param>
    /// <returns>W/K.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The area lies outside its range.</exception>
    public double WattPerKelvin(Area area) =>
        Coefficient.WattsPerSquareMeterKelvin * Guard.InRange(area.SquareMeters, 0, 1e6, "m²", nameof(area));

    /// <summary>The coefficient.</summary>
    /// <returns>For example <c>7.38 W/(m² K)</c>.</returns>
    public override string ToString() =>
        PlainText.Number(Coefficient.WattsPerSquareMeterKelvin)
        + " W/(m² K)"
        + (IsExtrapolated ? ", extrapolated: too low" : "");
}
