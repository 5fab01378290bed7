using System.Runtime.CompilerServices;
using UnitsNet;

namespace OilCondition.Text;

/// <summary>
/// The range in which each physical quantity is believed, once for all doors. All are common practice without a source: wider than anything
/// in service and narrower than a typing error or a figure in the wrong unit. Moments: <see cref="Guard.Moment"/>.
/// </summary>
internal static class PhysicalRange
{
    /// <summary>Oil temperature; <see cref="OilTemperature"/> checks it.</summary>
    public const double LowestCelsius = -60;
    public const double HighestCelsius = 200;

    /// <summary>
    /// All water per mass of oil, mg/kg. 500 000 is half water: beyond it the water is no longer in the oil but the oil in the water, and a sum
    /// of dissolved and free says nothing. 300 000 would refuse a sump that has stood under a leaking cooler.
    /// </summary>
    public const double HighestWaterMgPerKg = 500_000;

    /// <summary>
    /// What a saturation, or a saturated content, may be by arithmetic: a curve is followed far outside its points and then stops at pure water.
    /// </summary>
    public const double PureWaterMgPerKg = 1e6;

    /// <summary>A display of whole per cent shows 100 from 99.5 % on, and a zero may come out as −0.5 %.</summary>
    public const double RelativeSaturationGrace = 0.005;

    /// <summary>
    /// How far a moisture sensor may be out, as relative saturation. Capacitive sensors in oil are good to 0.02 to 0.03 (common practice, no source); one
    /// that is worse than 0.2 tells dry from wet and no more.
    /// </summary>
    public const double WorstSensorAccuracy = 0.2;

    /// <summary>Kinematic viscosity, mm²/s: the scale of ASTM D341, both ends from memory.</summary>
    public const double LowestCentistokes = 0.21;
    public const double HighestCentistokes = 2e7;

    /// <summary>Density of an oil, kg/m³: from light fuel to water-glycol and phosphate ester.</summary>
    public const double LowestDensity = 500;
    public const double HighestDensity = 1500;

    /// <summary>Specific heat capacity of an oil, J/(kg K); water has 4180.</summary>
    public const double LowestHeatCapacity = 500;
    public const double HighestHeatCapacity = 5000;

    /// <summary>All water in an oil, in mg/kg.</summary>
    public static double Water(MassFraction water, [CallerArgumentExpression(nameof(water))] string name = "") =>
        Guard.InRange(water.PartsPerMillion, 0, HighestWaterMgPerKg, "mg/kg", name);

    /// <summary>Relative saturation as sensors show it, brought to 0 to 1.</summary>
    public static double Saturation(
        Ratio relativeSaturation,
        [CallerArgumentExpression(nameof(relativeSaturation))] string name = ""
    ) => Saturation(relativeSaturation.DecimalFractions, name);

    /// <summary>Relative saturation as sensors show it, brought to 0 to 1.</summary>
    public static double Saturation(
        double relativeSaturation,
        [CallerArgumentExpression(nameof(relativeSaturation))] string name = ""
    ) =>
        Math.Min(
            1,
            Math.Max(
                0,
                Guard.InRange(
                    relativeSaturation,
                    -RelativeSaturationGrace,
                    1 + RelativeSaturationGrace,
                    "(ratio)",
                    name
                )
            )
        );

    /// <summary>The same for a reading that is kept as it was shown, a little beyond the ends where the display was.</summary>
    public static double SaturationReading(
        Ratio relativeSaturation,
        [CallerArgumentExpression(nameof(relativeSaturation))] string name = ""
    )
    {
        Saturation(relativeSaturation, name);
        return relativeSaturation.DecimalFractions;
    }

    /// <summary>How far a moisture sensor may be out.</summary>
    public static double SensorAccuracy(
        Ratio sensorError,
        [CallerArgumentExpression(nameof(sensorError))] string name = ""
    ) => Guard.InRange(sensorError.DecimalFractions, 0, WorstSensorAccuracy, "(ratio)", name);

    /// <summary>Kinematic viscosity, in mm²/s.</summary>
    public static double Centistokes(
        KinematicViscosity viscosity,
        [CallerArgumentExpression(nameof(viscosity))] string name = ""
    ) => Guard.InRange(viscosity.Centistokes, LowestCentistokes, HighestCentistokes, "mm²/s", name);

    /// <summary>Density of an oil, in kg/m³.</summary>
    public static double OilDensity(Density density, [CallerArgumentExpression(nameof(density))] string name = "") =>
        Guard.InRange(density.KilogramsPerCubicMeter, LowestDensity, HighestDensity, "kg/m³", name);

    /// <summary>Specific heat capacity of an oil, in J/(kg K).</summary>
    public static double HeatCapacity(
        SpecificEntropy heatCapacity,
        [CallerArgumentExpression(nameof(heatCapacity))] string name = ""
    ) => Guard.InRange(heatCapacity.JoulesPerKilogramKelvin, LowestHeatCapacity, HighestHeatCapacity, "J/(kg K)", name);
}
