using System.Runtime.CompilerServices;
using UnitsNet;

namespace OilCondition.Text;

/// <summary>
/// The temperatures at which anything in this library can be asked of an oil. Wider than any oil in service and
/// narrower than a typing error: a thermocouple that reads 2000 °C or a Fahrenheit figure in a Celsius field stops here.
/// </summary>
internal static class OilTemperature
{
    public const double LowestCelsius = PhysicalRange.LowestCelsius;
    public const double HighestCelsius = PhysicalRange.HighestCelsius;

    public static double Kelvins(
        Temperature temperature,
        [CallerArgumentExpression(nameof(temperature))] string name = ""
    ) => Celsius(temperature, name) + 273.15;

    public static double Celsius(
        Temperature temperature,
        [CallerArgumentExpression(nameof(temperature))] string name = ""
    ) => Guard.InRange(temperature.DegreesCelsius, LowestCelsius, HighestCelsius, "°C", name);
}
