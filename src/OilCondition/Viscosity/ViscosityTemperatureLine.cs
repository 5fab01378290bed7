using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>Kinematic viscosity of one oil against temperature, through two measured points.</summary>
/// <remarks>
/// Formula: log10 log10 Z = A − B log10 T, Z = v + 0.7 + exp(−1.47 − 1.84 v − 0.51 v²), or the general form for thin liquids
/// (<see cref="OfThinLiquid"/>).   v: kinematic viscosity [mm²/s];  T: [K];  A, B [-].
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
    internal D341Form Form { get; }

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
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature or viscosity lies outside its range.</exception>
    /// <exception cref="ArgumentException">The temperatures are equal, or the viscosity does not fall with temperature.</exception>
    public static ViscosityTemperatureLine FromTwoPoints(
        Temperature firstTemperature,
        KinematicViscosity firstViscosity,
        Temperature secondTemperature,
        KinematicViscosity secondViscosity
    ) => Through(firstTemperature, firstViscosity, secondTemperature, secondViscosity, D341Form.Simplified);

    /// <summary>The line of a fuel or solvent through two measured viscosities, one of them below 2 mm²/s.</summary>
    /// <remarks>
    /// Z = v + 0.7 + C − D + E − F + G − H: C = exp(−1.14883 − 2.65868 v), D = exp(−0.0038138 − 12.5645 v), E = exp(5.46491 − 37.6289 v),
    /// F = exp(13.0458 − 74.6851 v), G = exp(37.4619 − 192.643 v), H = exp(80.4945 − 400.468 v). The constants are from memory
    /// (<see cref="GeneralFormSource"/>); above 2 mm²/s both forms are the same within 0.04 %.
    /// </remarks>
    /// <param name="firstTemperature">Temperature of the first measurement, −60 to 200 °C.</param>
    /// <param name="firstViscosity">Viscosity there, 0.21 to 2e7 mm²/s.</param>
    /// <param name="secondTemperature">Another temperature.</param>
    /// <param name="secondViscosity">Viscosity there.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature or viscosity lies outside its range.</exception>
    /// <exception cref="ArgumentException">The temperatures are equal, or the viscosity does not fall with temperature.</exception>
    public static ViscosityTemperatureLine OfThinLiquid(
        Temperature firstTemperature,
        KinematicViscosity firstViscosity,
        Temperature secondTemperature,
        KinematicViscosity secondViscosity
    ) => Through(firstTemperature, firstViscosity, secondTemperature, secondViscosity, D341Form.General);

    private static ViscosityTemperatureLine Through(
        Temperature firstTemperature,
        KinematicViscosity firstViscosity,
        Temperature secondTemperature,
        KinematicViscosity secondViscosity,
        D341Form form
    )
    {
        var t1 = OilTemperature.Kelvins(firstTemperature);
        var t2 = OilTemperature.Kelvins(secondTemperature);
        var w1 = D341Scale.LogLogZ(PhysicalRange.Centistokes(firstViscosity), form);
        var w2 = D341Scale.LogLogZ(PhysicalRange.Centistokes(secondViscosity), form);
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
        var w = A - B * Math.Log10(kelvins);
        return new ViscosityPoint(
            temperature,
            KinematicViscosity.FromCentistokes(D341Scale.At(w, Form)),
            IsOutside(kelvins),
            D341Scale.IsThicker(w, Form),
            D341Scale.IsThinner(w, Form)
        );
    }

    /// <summary>The temperature at which the oil has a viscosity: the inverse of <see cref="ViscosityAt"/>.</summary>
    /// <param name="viscosity">Kinematic viscosity, 0.21 to 2e7 mm²/s.</param>
    /// <returns>
    /// The temperature, flagged where extrapolated. An oil that is thinner than this down to −60 °C, or thicker up to 200 °C, says so at that end.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity lies outside its range.</exception>
    public ViscosityPoint TemperatureFor(KinematicViscosity viscosity)
    {
        var w = D341Scale.LogLogZ(PhysicalRange.Centistokes(viscosity), Form);
        // Compared as logarithms: a flat line has its temperature far beyond what a double can hold.
        var logKelvins = (A - w) / B;
        var isThinner = logKelvins < Math.Log10(OilTemperature.LowestCelsius + 273.15);
        var isThicker = logKelvins > Math.Log10(OilTemperature.HighestCelsius + 273.15);
        var celsius =
            isThinner ? OilTemperature.LowestCelsius
            : isThicker ? OilTemperature.HighestCelsius
            : Math.Pow(10, logKelvins) - 273.15;
        return new ViscosityPoint(
            Temperature.FromDegreesCelsius(celsius),
            viscosity,
            isThinner || isThicker || IsOutside(celsius + 273.15),
            isThicker,
            isThinner
        );
    }

    /// <summary>The line by its points of a data sheet.</summary>
    /// <returns>For example <c>46 mm²/s at 40 °C, 6.8 mm²/s at 100 °C</c>.</returns>
    public override string ToString()
    {
        string Point(double celsius) =>
            $"{PlainText.Number(D341Scale.At(A - B * Math.Log10(celsius + 273.15), Form))} mm²/s at {celsius} °C";
        return $"{Point(40)}, {Point(100)}";
    }

    /// <summary>The line of a blend: the parts' lines at the same log T, weighed by share over slope, make a line again.</summary>
    internal static ViscosityTemperatureLine Blend(
        IReadOnlyList<(double Share, ViscosityTemperatureLine Line)> parts,
        D341Form form
    )
    {
        var slope = 1 / parts.Sum(part => part.Share / part.Line.B);
        var measured = parts.Where(part => part.Share > 0).ToList();
        return new ViscosityTemperatureLine(
            slope * parts.Sum(part => part.Share * part.Line.A / part.Line.B),
            slope * parts.Sum(part => part.Share),
            measured.Max(part => part.Line.lowest),
            measured.Min(part => part.Line.highest),
            form
        );
    }

    /// <summary>Whether a temperature lies outside the measured two; a billionth of a kelvin is rounding.</summary>
    private bool IsOutside(double kelvins) => kelvins < lowest - 1e-9 || kelvins > highest + 1e-9;
}
