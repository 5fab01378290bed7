using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>How fast a water drop sinks in still oil.</summary>
/// <remarks>
/// Stokes: v = g d² (ρ_w − ρ_oil) / (18 ρ_oil ν).   d: diameter [m];  ν: kinematic viscosity [m²/s];  g = 9.80665 m/s².
/// Source: Stokes' law, any handbook of fluid mechanics (from memory). Single drops that do not join: real settling of many drops is slower where they
/// hinder each other, and faster where they join. Flagged above a Reynolds number v d/ν of 0.1, where the law begins to overstate (2 % there).
/// </remarks>
internal sealed record DropletSettling
{
    private const double Gravity = 9.80665;

    private DropletSettling(TreatedOil oil, Temperature temperature, Length dropletDiameter)
    {
        var metres = Guard.InRange(dropletDiameter.Micrometers, 0.01, 5000, "µm", nameof(dropletDiameter)) * 1e-6;
        var warm = Temperature.FromDegreesCelsius(Math.Max(0.01, temperature.DegreesCelsius));
        var viscosity = oil.ViscosityLine.ViscosityAt(temperature);
        var squareMetrePerSecond = viscosity.Viscosity.Centistokes * 1e-6;
        var water = 1 / WaterVapour.LiquidVolume(warm).CubicMetersPerKilogram;
        var speed = Stokes(oil, temperature, metres, water, out var difference);
        DropletDiameter = dropletDiameter;
        DensityDifference = Density.FromKilogramsPerCubicMeter(difference);
        Velocity = Speed.FromMetersPerSecond(Math.Max(0, speed));
        Reynolds = Math.Abs(speed) * metres / squareMetrePerSecond;
        Sinks = difference > 0;
        IsOutsideRange = Reynolds > 0.1 || viscosity.IsExtrapolated;
    }

    /// <summary>Stokes' velocity in m/s of a sphere of a density in kg/m³; negative where it floats.</summary>
    internal static double Stokes(
        TreatedOil oil,
        Temperature temperature,
        double metres,
        double kilogramPerCubicMetre,
        out double difference
    )
    {
        var density = oil.Properties.At(temperature).Density.KilogramsPerCubicMeter;
        var squareMetrePerSecond = oil.ViscosityLine.ViscosityAt(temperature).Viscosity.Centistokes * 1e-6;
        difference = kilogramPerCubicMetre - density;
        return Gravity * metres * metres * difference / (18 * density * squareMetrePerSecond);
    }

    /// <summary>Diameter of the drop.</summary>
    public Length DropletDiameter { get; }

    /// <summary>Density of water less that of the oil; negative where the water floats.</summary>
    public Density DensityDifference { get; }

    /// <summary>Whether the drop sinks.</summary>
    public bool Sinks { get; }

    /// <summary>How fast it sinks; 0 where it does not.</summary>
    public Speed Velocity { get; }

    /// <summary>Reynolds number v d/ν.</summary>
    public double Reynolds { get; }

    /// <summary>Whether the Reynolds number exceeds 0.1, or the viscosity is extrapolated.</summary>
    public bool IsOutsideRange { get; }

    /// <summary>A drop in an oil at a temperature.</summary>
    /// <param name="oil">The oil.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C. Water colder than 0.01 °C is taken at 0.01 °C: ice does not settle like this.</param>
    /// <param name="dropletDiameter">Diameter, 0.01 to 5000 µm.</param>
    /// <returns>How it sinks.</returns>
    /// <exception cref="ArgumentNullException">The oil is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static DropletSettling In(TreatedOil oil, Temperature temperature, Length dropletDiameter) =>
        new(Guard.NotNull(oil), temperature, dropletDiameter);
}
