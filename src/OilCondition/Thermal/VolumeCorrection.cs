using System.Globalization;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>Thermal expansion of oil at atmospheric pressure, by the petroleum measurement tables, each edition under its own name.</summary>
/// <remarks>
/// The 2004 edition is not required to match the 1980 tables to the last digit: they differ by less than 0.00002 below 100 °C, which is
/// nothing beside the sampling error of a density. <see cref="OilProperties"/> uses Table 54D, on 15 °C.
/// Ranges: lubricating oils of 800.9 to 1163.5 kg/m³ at 60 °F, −50 to 150 °C (temperature range from memory). Outside, up to 500 to
/// 1500 kg/m³ and −60 to 200 °C, results are flagged. Constants and temperature difference share a unit: mixing °F constants with °C
/// makes the expansion wrong by a factor of 1.8.
/// </remarks>
/// <example>
/// <code>
/// var correction = VolumeCorrection.Table54D(Density.FromKilogramsPerCubicMeter(870), Temperature.FromDegreesCelsius(65));
/// var litresAt15 = 1500 * correction.Factor.DecimalFractions;   // 1445 L of the 1500 L measured at 65 °C
/// </code>
/// </example>
public sealed record VolumeCorrection
{
    /// <summary>(kg/m³)/°C, Table 54D.</summary>
    private const double ExpansionPerCelsius = 0.6278;

    /// <summary>Shift of 60 °F between the temperature scales of 1968 and 1990, in °F.</summary>
    private const double ScaleShift60 = 0.01374979547;

    private static readonly double[] ScaleShift =
    [
        -0.148759,
        -0.267408,
        1.080760,
        1.269056,
        -4.089591,
        -1.871251,
        7.438081,
        -3.536296,
    ];

    private VolumeCorrection(double factor, bool isExtrapolated)
    {
        Factor = Ratio.FromDecimalFractions(factor);
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>
    /// Volume at the reference temperature over volume at the oil's, which is also density there over reference density; below 1 when the
    /// oil is warmer than the reference.
    /// </summary>
    public Ratio Factor { get; }

    /// <summary>Whether density or temperature lies outside the range of the standard.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Reference 15 °C, ASTM D1250-80 / ISO 91 Table 54D for lubricating oils.</summary>
    /// <remarks>VCF = exp(−a Δ (1 + 0.8 a Δ)), a = 0.6278 / ρ15 per °C, Δ = t − 15 °C.</remarks>
    /// <param name="densityAt15">Density at 15 °C, 500 to 1500 kg/m³.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VolumeCorrection Table54D(Density densityAt15, Temperature temperature)
    {
        var density = PhysicalRange.OilDensity(densityAt15);
        var celsius = OilTemperature.Celsius(temperature);
        return new VolumeCorrection(
            Simple(ExpansionPerCelsius / density * (celsius - 15)),
            IsOutside(ThermalExpansion.LubricatingOil, density, celsius)
        );
    }

    /// <summary>Reference 60 °F, the simple form of 1980 for lubricating oils (Table 6D).</summary>
    /// <remarks>CTL = exp(−a Δ (1 + 0.8 a Δ)), a = 0.34878 / ρ60 per °F, Δ = t − 60 °F.</remarks>
    /// <param name="densityAt60F">Density at 60 °F, 500 to 1500 kg/m³.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VolumeCorrection Table6D(Density densityAt60F, Temperature temperature)
    {
        var density = PhysicalRange.OilDensity(densityAt60F);
        var celsius = OilTemperature.Celsius(temperature);
        var oil = ThermalExpansion.LubricatingOil;
        return new VolumeCorrection(
            Simple(oil.PerFahrenheit(density) * (Fahrenheit(celsius) - 60)),
            IsOutside(oil, density, celsius)
        );
    }

    /// <summary>Lubricating oil, reference 60 °F: API MPMS 11.1-2004 / ASTM D1250-04 with the change of the temperature scale from 1968 to 1990.</summary>
    /// <remarks>
    /// CTL = exp(−α D (1 + 0.8 α (D + δ60))), D = t68 − 60.0068749 °F, δ60 = 0.01374979547 °F; α from the density shifted to the scale of
    /// 1968. Reproduces the worked examples 1, 2, 3 and 7 of the standard to 2e-12.
    /// </remarks>
    /// <param name="densityAt60F">Density at 60 °F, 500 to 1500 kg/m³.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VolumeCorrection Api2004(Density densityAt60F, Temperature temperature) =>
        Api2004(ThermalExpansion.LubricatingOil, densityAt60F, temperature);

    /// <summary>The same for an oil whose expansion was measured, for example an ester or polyglycol that the constants do not describe.</summary>
    /// <param name="coefficient">Volumetric expansion at 60 °F (15.56 °C), α60; 0.00001 to 0.002 per K. Mineral oil: about 0.0007.</param>
    /// <param name="densityAt60F">Density at 60 °F, 500 to 1500 kg/m³.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The factor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VolumeCorrection Api2004(
        CoefficientOfThermalExpansion coefficient,
        Density densityAt60F,
        Temperature temperature
    ) => Api2004(ThermalExpansion.FromCoefficient(coefficient), densityAt60F, temperature);

    /// <summary>Density at 15 °C from a density observed at another temperature, Table 54D inverted (the task of Table 53D).</summary>
    /// <remarks>Solves ρ15 = ρ / VCF(ρ15). No correction for the expansion of a glass hydrometer.</remarks>
    /// <param name="observed">Density at the observed temperature, 500 to 1500 kg/m³.</param>
    /// <param name="temperature">Observed temperature, −60 to 200 °C.</param>
    /// <returns>Density at 15 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Density DensityAt15(Density observed, Temperature temperature)
    {
        var density = PhysicalRange.OilDensity(observed);
        var difference = OilTemperature.Celsius(temperature) - 15;
        var reference = density;

        // Each step shrinks the error by a factor of about α Δ, at most 0.3.
        for (var i = 0; i < 40; i++)
        {
            reference = density / Simple(ExpansionPerCelsius / reference * difference);
        }

        return Density.FromKilogramsPerCubicMeter(reference);
    }

    /// <summary>The factor to four decimals.</summary>
    /// <returns>For example <c>0.9633</c>.</returns>
    public override string ToString() =>
        Factor.DecimalFractions.ToString("0.0000", CultureInfo.InvariantCulture)
        + (IsExtrapolated ? ", extrapolated" : "");

    /// <summary>Any group of the standard of 2004.</summary>
    internal static VolumeCorrection Api2004(ThermalExpansion expansion, Density densityAt60F, Temperature temperature)
    {
        var density = PhysicalRange.OilDensity(densityAt60F);
        var celsius = OilTemperature.Celsius(temperature);
        var difference = Fahrenheit(OnScaleOf1968(celsius)) - 60.0068749;
        var alpha = expansion.PerFahrenheit(ShiftedDensity(expansion, density));
        return new VolumeCorrection(
            Math.Exp(-alpha * difference * (1 + 0.8 * alpha * (difference + ScaleShift60))),
            IsOutside(expansion, density, celsius)
        );
    }

    private static double Simple(double expansion) => Math.Exp(-expansion * (1 + 0.8 * expansion));

    private static double OnScaleOf1968(double celsius)
    {
        var s = celsius / 630;
        double sum = 0;
        for (var i = ScaleShift.Length - 1; i >= 0; i--)
        {
            sum = s * (ScaleShift[i] + sum);
        }

        return celsius - sum;
    }

    private static double ShiftedDensity(ThermalExpansion constants, double density)
    {
        var a = ScaleShift60 / 2 * constants.PerFahrenheit(density);
        var b =
            (2 * constants.K0 + constants.K1 * density)
            / (constants.K0 + (constants.K1 + constants.K2 * density) * density);
        return density * (1 + (Math.Exp(a * (1 + 0.8 * a)) - 1) / (1 + a * (1 + 1.6 * a) * b));
    }

    private static double Fahrenheit(double celsius) => 1.8 * celsius + 32;

    private static bool IsOutside(ThermalExpansion constants, double density, double celsius) =>
        density < constants.Lowest.KilogramsPerCubicMeter
        || density > constants.Highest.KilogramsPerCubicMeter
        || celsius < -50
        || celsius > 150;
}
