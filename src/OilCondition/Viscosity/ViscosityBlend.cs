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
        var wOil = D341Scale.LogLogZ(PhysicalRange.Centistokes(oil));
        var wAdded = D341Scale.LogLogZ(PhysicalRange.Centistokes(added));
        var f = Guard.InRange(addedFraction.DecimalFractions, 0, 1, "", nameof(addedFraction));
        return KinematicViscosity.FromCentistokes(D341Scale.At(wOil + f * (wAdded - wOil)));
    }

    /// <summary>Viscosity of a blend against temperature from the lines of its parts (Wright method).</summary>
    /// <remarks>
    /// With W_i = A_i − B_i log10 T the rule is a line again: B = 1 / sum (f_i/B_i), A = B sum (f_i A_i/B_i). It counts as extrapolated wherever any
    /// part with a share is.
    /// </remarks>
    /// <param name="parts">Share of the blend by volume, 0 to 1, and line of each part; shares add to 1 within 1e−6.</param>
    /// <returns>The line of the blend.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="parts"/> or a line is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A share lies outside 0 to 1.</exception>
    /// <exception cref="ArgumentException">There is no part, the shares do not add to 1, or thin liquids are mixed with lines in the simplified form.</exception>
    public static ViscosityTemperatureLine OfLines(params (Ratio Share, ViscosityTemperatureLine Line)[] parts)
    {
        List<(double Share, ViscosityTemperatureLine Line)> read =
        [
            .. Guard
                .NotNull(parts)
                .Select(part =>
                    (
                        Guard.InRange(part.Share.DecimalFractions, 0, 1, "", nameof(parts)),
                        Guard.NotNull(part.Line, nameof(parts))
                    )
                ),
        ];
        var sum = read.Sum(part => part.Share);
        if (!(Math.Abs(sum - 1) <= SumTolerance))
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The volume fractions of {read.Count} parts add to {sum:G7}; allowed: 1 within {SumTolerance:G1}."
                ),
                nameof(parts)
            );
        }

        // Lines in different forms measure W on different scales.
        var form = read[0].Line.Form;
        return read.All(part => part.Line.Form == form)
            ? ViscosityTemperatureLine.Blend(read, form)
            : throw new ArgumentException(
                $"The lines of the parts have the forms {string.Join(", ", read.Select(part => part.Line.Form))}; allowed: one form.",
                nameof(parts)
            );
    }
}
