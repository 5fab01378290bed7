using MathNet.Numerics.RootFinding;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>Saybolt Universal seconds and kinematic viscosity, after ASTM D2161.</summary>
/// <remarks>
/// <para>
/// SUS at 100 °F = 4.6324 v + (1 + 0.03264 v) / ((3930.2 + 262.7 v + 23.97 v² + 1.646 v³) 1e−5), v in mm²/s;
/// at t °F times 1 + 0.000061 (t − 100) (the temperature factor is from memory).
/// </para>
/// <para>
/// Range: the practice's table begins at 32 SUS, which it gives to 1.81 mm²/s at 100 °F and to 1.77 mm²/s at 210 °F; the equation makes 31.95 and 32.03
/// of these. Both ways the range is therefore stated in seconds, from 31.94 (32 less the rounding of the table) on, whatever the temperature; and up to
/// 120 000 mm²/s, about 556 000 SUS. Above the table (500 mm²/s at 100 °F, 139.8 at 210 °F) the practice has SUS = 4.632 v and 4.664 v; the equations
/// here go on and agree with them within 0.02 %.
/// </para>
/// </remarks>
/// <example><code>SayboltViscosity.ToSayboltSeconds(KinematicViscosity.FromCentistokes(20.6), Temperature.FromDegreesFahrenheit(100)); // 100.4</code></example>
public static class SayboltViscosity
{
    private const double LowestSeconds = 31.94;
    private const double HighestCentistokes = 120_000;

    /// <summary>Saybolt Universal seconds of a kinematic viscosity.</summary>
    /// <param name="viscosity">Kinematic viscosity, of 31.94 SUS (1.81 mm²/s at 100 °F) to 120 000 mm²/s.</param>
    /// <param name="temperature">Temperature at which both hold, −60 to 200 °C.</param>
    /// <returns>Saybolt Universal seconds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity or temperature lies outside its range.</exception>
    public static double ToSayboltSeconds(KinematicViscosity viscosity, Temperature temperature)
    {
        var factor = TemperatureFactor(temperature);
        var lowest = CentistokesAt100Fahrenheit(LowestSeconds / factor);
        var v = Guard.InRange(viscosity.Centistokes, lowest, HighestCentistokes, "mm²/s", nameof(viscosity));
        return SecondsAt100Fahrenheit(v) * factor;
    }

    /// <summary>Kinematic viscosity of Saybolt Universal seconds.</summary>
    /// <param name="sayboltSeconds">Saybolt Universal seconds, 31.94 to those of 120 000 mm²/s.</param>
    /// <param name="temperature">Temperature at which both hold, −60 to 200 °C.</param>
    /// <returns>Kinematic viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The seconds or the temperature lie outside their range.</exception>
    public static KinematicViscosity FromSayboltSeconds(double sayboltSeconds, Temperature temperature)
    {
        var factor = TemperatureFactor(temperature);
        var highest = SecondsAt100Fahrenheit(HighestCentistokes) * factor;
        Guard.InRange(sayboltSeconds, LowestSeconds, highest, "SUS");
        return KinematicViscosity.FromCentistokes(CentistokesAt100Fahrenheit(sayboltSeconds / factor));
    }

    private static double CentistokesAt100Fahrenheit(double seconds) =>
        Brent.FindRoot(v => SecondsAt100Fahrenheit(v) - seconds, 1, 2 * HighestCentistokes, 1e-9);

    private static double SecondsAt100Fahrenheit(double v) =>
        4.6324 * v + (1 + 0.03264 * v) / ((3930.2 + 262.7 * v + 23.97 * v * v + 1.646 * v * v * v) * 1e-5);

    private static double TemperatureFactor(Temperature temperature) =>
        1 + 0.000061 * (OilTemperature.Celsius(temperature) * 1.8 + 32 - 100);
}
