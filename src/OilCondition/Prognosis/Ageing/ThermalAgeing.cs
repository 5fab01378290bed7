using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>How much faster oil ages at another temperature: a what-if, not a measurement.</summary>
/// <remarks>
/// Arrhenius: acceleration = exp(E/R (1/T1 − 1/T2)), T in kelvin, R = 8.314462618 J/(mol K); 1 eV a molecule is 96.485 kJ/mol. It holds while one
/// reaction rules; sludge, catalysts, water and spent antioxidant change it. Source: NIST/SEMATECH e-Handbook 8.1.5.1.
/// The ten-degree rule, rate · 2^(ΔT/10), is a rule of thumb (ASTM STP, 1986, on turbine oil oxidation, abstract): it is no single activation energy,
/// <see cref="TenDegreeActivationEnergy"/> tells which one it stands for near a temperature (62 kJ/mol at 50 °C, 74 at 80 °C).
/// </remarks>
/// <example>
/// <code>
/// var faster = ThermalAgeing.TenDegreeRule(TemperatureDelta.FromDegreesCelsius(10));   // 2
/// var warmer = crosses.Crossing.WithAgeing(faster);                                    // the same oil, 10 °C warmer from now on
/// </code>
/// </example>
public static class ThermalAgeing
{
    private const double GasConstant = 8.31446261815324;

    /// <summary>Ageing rate at one temperature over that at another.</summary>
    /// <param name="activationEnergy">Activation energy E, above 0; 60 to 120 kJ/mol is usual for oil oxidation (common practice, no source).</param>
    /// <param name="from">The temperature of the past, −60 to 200 °C.</param>
    /// <param name="to">The temperature asked about, −60 to 200 °C.</param>
    /// <returns>Above 1 when hotter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its range.</exception>
    public static Ratio Acceleration(MolarEnergy activationEnergy, Temperature from, Temperature to)
    {
        var energy = Guard.InRange(activationEnergy.KilojoulesPerMole, 1e-3, 1000, "kJ/mol", nameof(activationEnergy));
        return Ratio.FromDecimalFractions(
            Math.Exp(1000 * energy / GasConstant * (1 / OilTemperature.Kelvins(from) - 1 / OilTemperature.Kelvins(to)))
        );
    }

    /// <summary>Rule of thumb: ageing doubles for every 10 °C.</summary>
    /// <param name="rise">Rise of temperature, −100 to 100 °C; the rule is stretched beyond 20 °C or so.</param>
    /// <returns>2^(rise / 10 °C).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The rise is outside its range.</exception>
    public static Ratio TenDegreeRule(TemperatureDelta rise) =>
        Ratio.FromDecimalFractions(Math.Pow(2, Guard.InRange(rise.DegreesCelsius, -100, 100, "°C", nameof(rise)) / 10));

    /// <summary>The activation energy that doubles a rate from a temperature to one 10 °C higher, R ln 2 / (1/T − 1/(T + 10)).</summary>
    /// <param name="temperature">The lower temperature, −60 to 200 °C.</param>
    /// <returns>The activation energy.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public static MolarEnergy TenDegreeActivationEnergy(Temperature temperature)
    {
        var kelvins = OilTemperature.Kelvins(temperature);
        return MolarEnergy.FromJoulesPerMole(GasConstant * Math.Log(2) / (1 / kelvins - 1 / (kelvins + 10)));
    }
}
