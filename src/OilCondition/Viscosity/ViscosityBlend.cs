using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>Viscosity of a blend of oils, after ASTM D7152.</summary>
/// <remarks>
/// At one temperature: W_B = sum f_i W_i, W = log10 log10 Z (Z as in <see cref="ViscosityTemperatureLine"/>).
/// From lines, the Wright method, which the practice prefers: W_B = (log10 T + sum f_i (W_i/m_i − log10 T_i)) / sum (f_i/m_i),
/// m_i = slope of W_i against log10 T.   f: share by volume [-];  T: [K].
/// For oils that mix fully and are Newtonian; not for viscosity-index improvers or particles. The method gives no uncertainty of its own.
/// </remarks>
/// <example>
/// <code>
/// var mixed = ViscosityBlend.OfTwo(
///     KinematicViscosity.FromCentistokes(46), KinematicViscosity.FromCentistokes(220), Ratio.FromPercent(10));   // 52.6 mm²/s
/// </code>
/// </example>
public static class ViscosityBlend
{
    private const double SumTolerance = 1e-6;

    /// <summary>Where the method comes from.</summary>
    public static Source Source { get; } =
        new(SourceKind.Standard, "ASTM D7152 (scope seen; closed form of the Wright method from public code)");

    /// <summary>Viscosity of an oil with another in it, both known at one temperature.</summary>
    /// <param name="oil">Viscosity of the oil, 0.21 to 2e7 mm²/s.</param>
    /// <param name="added">Viscosity of what is added, at the same temperature, 0.21 to 2e7 mm²/s.</param>
    /// <param name="addedFraction">Share of what is added in the whole blend, by volume, 0 to 1.</param>
    /// <returns>Viscosity of the blend at that temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static KinematicViscosity OfTwo(KinematicViscosity oil, KinematicViscosity added, Ratio addedFraction)
    {
        var wOil = D341Scale.LogLogZ(D341Scale.Centistokes(oil, nameof(oil)));
        var wAdded = D341Scale.LogLogZ(D341Scale.Centistokes(added, nameof(added)));
        var f = Guard.InRange(addedFraction.DecimalFractions, 0, 1, "", nameof(addedFraction));
        return D341Scale.PointAt(wOil + f * (wAdded - wOil)).Viscosity;
    }

    /// <summary>Viscosity of a blend at a temperature from the lines of its parts (Wright method).</summary>
    /// <param name="parts">The parts; shares add to 1 within 1e−6.</param>
    /// <param name="temperature">Temperature of the blend, −60 to 200 °C.</param>
    /// <returns>The viscosity; extrapolated where it is so for any part with a share.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="parts"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no part, the shares do not add to 1, or the lines have different forms of ASTM D341.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside −60 to 200 °C.</exception>
    public static ViscosityPoint At(IReadOnlyList<BlendPart> parts, Temperature temperature)
    {
        var sum = Guard.NotNull(parts).Sum(part => part.VolumeFraction.DecimalFractions);
        if (!(Math.Abs(sum - 1) <= SumTolerance))
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The volume fractions of {parts.Count} parts add to {sum:G7}; allowed: 1 within {SumTolerance:G1}."
                ),
                nameof(parts)
            );
        }

        // Lines in different forms measure W on different scales.
        var form = parts[0].Line.Form;
        if (parts.Any(part => part.Line.Form != form))
        {
            throw new ArgumentException(
                $"The lines of the parts have the forms {string.Join(", ", parts.Select(part => part.Line.Form))}; allowed: one form.",
                nameof(parts)
            );
        }

        var kelvins = OilTemperature.Kelvins(temperature);
        // With W_i = A_i − B_i log10 T_i and m_i = −B_i the bracket of each part is −A_i/B_i, whatever its T_i.
        var constant = parts.Sum(part => part.VolumeFraction.DecimalFractions * part.Line.A / part.Line.B);
        var slope = parts.Sum(part => part.VolumeFraction.DecimalFractions / part.Line.B);
        var (viscosity, outcome) = D341Scale.PointAt((constant - sum * Math.Log10(kelvins)) / slope, form);
        return new ViscosityPoint(
            temperature,
            viscosity,
            parts.Any(part => part.VolumeFraction.DecimalFractions > 0 && part.Line.IsOutside(kelvins)),
            outcome
        );
    }
}
