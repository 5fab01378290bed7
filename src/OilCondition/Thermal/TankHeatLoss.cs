using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>Heat lost through the walls of a tank.</summary>
/// <remarks>
/// Q = α A ΔT. The guide figures are those of a public table for fuel-oil tanks, given in steps of oil temperature up to 10, 27 and 38 °C;
/// wind, fill level and circulation move them by half and more. Above 38 °C, where warm hydraulic oil lies, they are flagged.
/// Measure a cool-down with the heater off where the figure matters.
/// </remarks>
public static class TankHeatLoss
{
    /// <summary>Rows: oil temperature up to 10, 27, 38 °C. Columns: sheltered bare, sheltered insulated, exposed bare, exposed insulated; Btu/(h ft² °F).</summary>
    private static readonly double[][] Table =
    [
        [1.2, 0.3, 1.4, 0.35],
        [1.3, 0.33, 1.5, 0.38],
        [1.4, 0.35, 1.6, 0.4],
    ];

    /// <summary>Where the guide figures come from.</summary>
    public static Source Source { get; } =
        new(SourceKind.Handbook, "public engineering table of heat loss from oil tanks", "sheltered and exposed tanks");

    /// <summary>Guide figure for the heat transfer through a tank wall.</summary>
    /// <param name="site">Where the tank stands.</param>
    /// <param name="wall">How it is clad.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The guide figure, flagged above 38 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range, or there is no such site or wall.</exception>
    public static TankHeatLossGuide Guide(TankSite site, TankWall wall, Temperature temperature)
    {
        const double Rounding = 1e-9;
        Guard.InRange((int)site, 0, (int)TankSite.Exposed, "(no such site)", nameof(site));
        Guard.InRange((int)wall, 0, (int)TankWall.Insulated, "(no such wall)", nameof(wall));
        var celsius = OilTemperature.Celsius(temperature) - Rounding;
        var row =
            celsius <= 10 ? 0
            : celsius <= 27 ? 1
            : 2;
        var column = (site == TankSite.Exposed ? 2 : 0) + (wall == TankWall.Insulated ? 1 : 0);
        return new TankHeatLossGuide(
            HeatTransferCoefficient.FromBtusPerHourSquareFootDegreeFahrenheit(Table[row][column]),
            celsius > 38
        );
    }

    /// <summary>Heat lost, α A ΔT.</summary>
    /// <param name="coefficient">Heat transfer per area and kelvin, 0 to 1000 W/(m² K).</param>
    /// <param name="area">Area that loses heat, 0 or more.</param>
    /// <param name="difference">Oil temperature less that of the surroundings; negative where the oil is colder and takes up heat.</param>
    /// <returns>The loss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Power Loss(HeatTransferCoefficient coefficient, Area area, TemperatureDelta difference) =>
        Power.FromWatts(
            LossWattPerKelvin(coefficient, area) * Guard.InRange(difference.Kelvins, -260, 260, "K", nameof(difference))
        );

    /// <summary>Loss per kelvin, α A, for <see cref="HeatedTank"/>; add the parts of a tank that differ.</summary>
    /// <param name="coefficient">Heat transfer per area and kelvin, 0 to 1000 W/(m² K).</param>
    /// <param name="area">Area that loses heat, 0 or more.</param>
    /// <returns>W/K.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static double LossWattPerKelvin(HeatTransferCoefficient coefficient, Area area) =>
        Guard.InRange(coefficient.WattsPerSquareMeterKelvin, 0, 1000, "W/(m² K)", nameof(coefficient))
        * Guard.InRange(area.SquareMeters, 0, 1e6, "m²", nameof(area));
}
