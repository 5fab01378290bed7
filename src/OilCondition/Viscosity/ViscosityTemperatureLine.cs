using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>Kinematic viscosity of one oil against temperature, through two measured points.</summary>
/// <remarks>
/// Formula: log10 log10 Z = A − B log10 T, Z = v + 0.7 + exp(−1.47 − 1.84 v − 0.51 v²), or the general form for thin liquids
/// (<see cref="D341Form"/>).   v: kinematic viscosity [mm²/s];  T: [K];  A, B [-].
/// For a homogeneous Newtonian oil between cloud point and initial boiling point. Outside the two measured temperatures every result says
/// that it is extrapolated; cold oils with viscosity-index improvers are thicker or thinner than the line. Scale: 0.21 to 2e7 mm²/s (both ends
/// from memory).
/// </remarks>
/// <example>
/// <code>
/// var line = ViscosityTemperatureLine.FromTwoPoints(
///     Temperature.FromDegreesCelsius(40), KinematicViscosity.FromCentistokes(46),
///     Temperature.FromDegreesCelsius(100), KinematicViscosity.FromCentistokes(6.8));
/// var coldStart = line.ViscosityAt(Temperature.FromDegreesCelsius(-10));
/// </code>
/// </example>
public sealed class ViscosityTemperatureLine
{
    private readonly double lowest;
    private readonly double highest;

    private ViscosityTemperatureLine(double a, double b, double lowest, double highest, D341Form form)
    {
        A = a;
        B = b;
        Form = form;
        this.lowest = lowest;
        this.highest = highest;
    }

    /// <summary>Constant A.</summary>
    public double A { get; }

    /// <summary>Slope B, above 0.</summary>
    public double B { get; }

    /// <summary>The form of Z.</summary>
    public D341Form Form { get; }

    /// <summary>Where the simplified form comes from.</summary>
    public static Source Source { get; } =
        new(SourceKind.Standard, "ASTM D341, simplified equations as seen in reproduction", "Z and its inverse");

    /// <summary>Where the constants of the general form come from.</summary>
    public static Source GeneralFormSource { get; } =
        new(SourceKind.FromMemory, "ASTM D341, general form; the same constants seen in public code", "terms C to H");

    /// <summary>The line through two measured viscosities.</summary>
    /// <param name="firstTemperature">Temperature of the first measurement, −60 to 200 °C.</param>
    /// <param name="firstViscosity">Viscosity there, 0.21 to 2e7 mm²/s.</param>
    /// <param name="secondTemperature">Another temperature.</param>
    /// <param name="secondViscosity">Viscosity there.</param>
    /// <param name="form">The form of Z; the general one where a viscosity is below 2 mm²/s and its constants, from memory, are accepted.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature or viscosity lies outside its range, or the form is not one of the named.</exception>
    /// <exception cref="ArgumentException">The temperatures are equal, or the viscosity does not fall with temperature.</exception>
    public static ViscosityTemperatureLine FromTwoPoints(
        Temperature firstTemperature,
        KinematicViscosity firstViscosity,
        Temperature secondTemperature,
        KinematicViscosity secondViscosity,
        D341Form form = D341Form.Simplified
    )
    {
        if (form is not (D341Form.Simplified or D341Form.General))
        {
            throw new ArgumentOutOfRangeException(nameof(form), $"form is {form}; allowed: Simplified, General.");
        }

        var t1 = OilTemperature.Kelvins(firstTemperature);
        var t2 = OilTemperature.Kelvins(secondTemperature);
        var w1 = D341Scale.LogLogZ(D341Scale.Centistokes(firstViscosity, nameof(firstViscosity)), form);
        var w2 = D341Scale.LogLogZ(D341Scale.Centistokes(secondViscosity, nameof(secondViscosity)), form);
        if (Math.Abs(t1 - t2) < 1e-6 || !((w1 - w2) * (t2 - t1) > 0))
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The points are {firstViscosity.Centistokes:G7} mm²/s at {firstTemperature.DegreesCelsius:G7} °C and {secondViscosity.Centistokes:G7} mm²/s at {secondTemperature.DegreesCelsius:G7} °C; allowed: temperatures at least 1e-6 K apart, the lower viscosity at the higher temperature."
                ),
                nameof(secondViscosity)
            );
        }

        var b = (w1 - w2) / (Math.Log10(t2) - Math.Log10(t1));
        return new ViscosityTemperatureLine(w1 + b * Math.Log10(t1), b, Math.Min(t1, t2), Math.Max(t1, t2), form);
    }

    /// <summary>Viscosity at a temperature.</summary>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The viscosity, flagged where extrapolated or off the scale.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside −60 to 200 °C.</exception>
    public ViscosityPoint ViscosityAt(Temperature temperature)
    {
        var kelvins = OilTemperature.Kelvins(temperature);
        var (viscosity, outcome) = D341Scale.PointAt(LogLogZAt(kelvins), Form);
        return new ViscosityPoint(temperature, viscosity, IsOutside(kelvins), outcome);
    }

    /// <summary>The temperature at which the oil has a viscosity: the inverse of <see cref="ViscosityAt"/>.</summary>
    /// <param name="viscosity">Kinematic viscosity, 0.21 to 2e7 mm²/s.</param>
    /// <returns>The temperature, flagged where extrapolated or outside −60 to 200 °C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity lies outside its range.</exception>
    public TemperatureForViscosity TemperatureFor(KinematicViscosity viscosity)
    {
        var w = D341Scale.LogLogZ(D341Scale.Centistokes(viscosity, nameof(viscosity)), Form);
        // Compared as logarithms: a flat line has its temperature far beyond what a double can hold.
        var logKelvins = (A - w) / B;
        var outcome =
            logKelvins < Math.Log10(OilTemperature.LowestCelsius + 273.15) ? TemperatureOutcome.ColderThanRange
            : logKelvins > Math.Log10(OilTemperature.HighestCelsius + 273.15) ? TemperatureOutcome.HotterThanRange
            : TemperatureOutcome.Found;
        var kelvins = outcome switch
        {
            TemperatureOutcome.ColderThanRange => OilTemperature.LowestCelsius + 273.15,
            TemperatureOutcome.HotterThanRange => OilTemperature.HighestCelsius + 273.15,
            _ => Math.Pow(10, logKelvins),
        };
        return new TemperatureForViscosity(
            viscosity,
            Temperature.FromDegreesCelsius(kelvins - 273.15),
            outcome != TemperatureOutcome.Found || IsOutside(kelvins),
            outcome
        );
    }

    internal double LogLogZAt(double kelvins) => A - B * Math.Log10(kelvins);

    /// <summary>Whether a temperature lies outside the measured two; a billionth of a kelvin is rounding.</summary>
    internal bool IsOutside(double kelvins) => kelvins < lowest - 1e-9 || kelvins > highest + 1e-9;
}
