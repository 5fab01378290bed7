using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Air pressure against altitude, where no barometer is at hand.</summary>
/// <remarks>
/// ISO 2533 (troposphere): p = 101325 Pa (1 − 0.0065 H / 288.15)^5.255880, H: geopotential altitude [m],
/// exponent = 9.80665 / (287.05287 × 0.0065). Weather moves the pressure by ±2 to 3 % about this (common practice): a measured local
/// pressure is better. A weather report gives pressure reduced to sea level, which is not the local pressure.
/// </remarks>
public static class StandardAtmosphere
{
    private const double EarthRadiusMetres = 6_356_766;

    /// <summary>Pressure at sea level, 101 325 Pa.</summary>
    public static Pressure SeaLevel { get; } = Pressure.FromPascals(101_325);

    /// <summary>Pressure at a geopotential altitude. Below 3000 m the altitude on a map differs from it by less than 1.5 m.</summary>
    /// <param name="altitude">Altitude above sea level, −1000 to 11 000 m.</param>
    /// <returns>Absolute pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies outside its range.</exception>
    public static Pressure PressureAt(Length altitude) =>
        Pressure.FromPascals(Pascal(Guard.InRange(altitude.Meters, -1000, 11_000, "m", nameof(altitude))));

    /// <summary>Pressure at an altitude as measured with a rule or on a map: H = r Z / (r + Z) with r = 6 356 766 m.</summary>
    /// <param name="geometricAltitude">Geometric altitude Z above sea level, −1000 to 11 000 m.</param>
    /// <returns>Absolute pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The altitude lies outside its range.</exception>
    public static Pressure PressureAtGeometric(Length geometricAltitude)
    {
        var z = Guard.InRange(geometricAltitude.Meters, -1000, 11_000, "m", nameof(geometricAltitude));
        return Pressure.FromPascals(Pascal(EarthRadiusMetres * z / (EarthRadiusMetres + z)));
    }

    private static double Pascal(double metres) =>
        101_325 * Math.Pow(1 - 0.0065 * metres / 288.15, 9.80665 / (287.05287 * 0.0065));
}
