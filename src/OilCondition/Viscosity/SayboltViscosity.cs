using MathNet.Numerics.RootFinding;
using OilCondition.Guards;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>Saybolt Universal seconds and kinematic viscosity, after ASTM D2161.</summary>
/// <remarks>
/// SUS at 100 °F = 4.6324 v + (1 + 0.03264 v) / ((3930.2 + 262.7 v + 23.97 v² + 1.646 v³) 1e−5), v in mm²/s;
/// at t °F times 1 + 0.000061 (t − 100) (the temperature factor is from memory).
/// </remarks>
public static class SayboltViscosity
{
    private const double HighestSeconds = 500_000;

    /// <summary>Saybolt Universal seconds of a kinematic viscosity.</summary>
    /// <param name="viscosity">Kinematic viscosity, 1.81 mm²/s (32 SUS) and above.</param>
    /// <param name="temperature">Temperature at which both hold.</param>
    /// <returns>Saybolt Universal seconds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity is below 1.81 mm²/s.</exception>
    public static double ToSayboltSeconds(KinematicViscosity viscosity, Temperature temperature)
    {
        var v = Guard.InRange(viscosity.Centistokes, 1.81, 120_000, "mm²/s", nameof(viscosity));
        return SecondsAt100Fahrenheit(v) * TemperatureFactor(temperature);
    }

    /// <summary>Kinematic viscosity of Saybolt Universal seconds.</summary>
    /// <param name="sayboltSeconds">Saybolt Universal seconds, 32 and above.</param>
    /// <param name="temperature">Temperature at which both hold.</param>
    /// <returns>Kinematic viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The seconds are below 32.</exception>
    public static KinematicViscosity FromSayboltSeconds(double sayboltSeconds, Temperature temperature)
    {
        Guard.InRange(sayboltSeconds, 32, HighestSeconds, "SUS", nameof(sayboltSeconds));
        var seconds = sayboltSeconds / TemperatureFactor(temperature);
        return KinematicViscosity.FromCentistokes(
            Brent.FindRoot(v => SecondsAt100Fahrenheit(v) - seconds, 1, 200_000, 1e-9)
        );
    }

    private static double SecondsAt100Fahrenheit(double v) =>
        4.6324 * v + (1 + 0.03264 * v) / ((3930.2 + 262.7 * v + 23.97 * v * v + 1.646 * v * v * v) * 1e-5);

    private static double TemperatureFactor(Temperature temperature) =>
        1 + 0.000061 * (OilTemperature.Celsius(temperature, nameof(temperature)) * 1.8 + 32 - 100);
}
