using MathNet.Numerics.Distributions;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>Share of fuel or of a wrong oil in an oil, estimated from the viscosity of the mixture, with its uncertainty.</summary>
/// <remarks>
/// Formula: f = (W_mix − W_oil)/(W_diluent − W_oil), W = log10 log10 Z at one temperature: the blending rule of ASTM D7152 turned round.
/// Uncertainty, to first order, the three viscosities independent: u_f² = sum (∂f/∂W_i · dW_i/d ln v_i · u_i)², u_i: relative standard uncertainty [-].
/// Interval: f ± z u_f, two-sided normal at the stated chance, cut to 0 to 1. The blending rule's own error is not in it, nor is the oil's own
/// thickening (oxidation, soot) or thinning by shear: an oil that thickens hides fuel. Confirm by flash point or gas chromatography (common practice,
/// no source). Caution: fuel in a crankcase lowers the flash point: a risk of fire and explosion that the engine maker's limits govern.
/// </remarks>
/// <example>
/// <code>
/// var fuel = OilDilution.Estimate(
///     KinematicViscosity.FromCentistokes(150), KinematicViscosity.FromCentistokes(3), KinematicViscosity.FromCentistokes(110),
///     Ratio.FromPercent(1), Ratio.FromPercent(5), Ratio.FromPercent(1), 0.95);   // 4.7 % by volume
/// </code>
/// </example>
public sealed record OilDilution
{
    private OilDilution(double fraction, double standard, double z)
    {
        Fraction = Ratio.FromDecimalFractions(Cut(fraction));
        StandardUncertainty = Ratio.FromDecimalFractions(standard);
        Lowest = Ratio.FromDecimalFractions(Cut(fraction - z * standard));
        Highest = Ratio.FromDecimalFractions(Cut(fraction + z * standard));
        IsExplained = fraction + z * standard >= 0 && fraction - z * standard <= 1;
    }

    /// <summary>Share of the diluent by volume, cut to 0 to 1.</summary>
    public Ratio Fraction { get; }

    /// <summary>Standard uncertainty of the share, before the cut.</summary>
    public Ratio StandardUncertainty { get; }

    /// <summary>Lower end of the interval.</summary>
    public Ratio Lowest { get; }

    /// <summary>Upper end of the interval.</summary>
    public Ratio Highest { get; }

    /// <summary>
    /// Whether this diluent can explain the viscosity. It cannot where the viscosity moved away from that of the diluent, or lies beyond it, by more
    /// than the uncertainty; the share then stands at 0 or at 1.
    /// </summary>
    public bool IsExplained { get; }

    /// <summary>Whether the diluent is detected: the interval of the share lies above 0. If not, the change is within the uncertainty of the viscosities.</summary>
    public bool IsDetected => IsExplained && Lowest.DecimalFractions > 0;

    /// <summary>Estimates the share of a diluent. All viscosities at one temperature.</summary>
    /// <param name="oil">Viscosity of the oil without the diluent, best that of the same oil fill, 0.21 to 2e7 mm²/s.</param>
    /// <param name="diluent">Viscosity of the fuel or wrong oil, 0.21 to 2e7 mm²/s, at least 5 % from that of the oil.</param>
    /// <param name="mixture">Measured viscosity, 0.21 to 2e7 mm²/s.</param>
    /// <param name="oilUncertainty">Relative standard uncertainty of the oil's viscosity, 0 to 0.5.</param>
    /// <param name="diluentUncertainty">Relative standard uncertainty of the diluent's viscosity, 0 to 0.5.</param>
    /// <param name="mixtureUncertainty">Relative standard uncertainty of the measured viscosity, 0 to 0.5.</param>
    /// <param name="chance">Chance that the interval holds the share, above 0 and below 1.</param>
    /// <returns>Share, uncertainty, interval and what they show.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    /// <exception cref="ArgumentException">Oil and diluent are too alike for viscosity to tell them apart.</exception>
    public static OilDilution Estimate(
        KinematicViscosity oil,
        KinematicViscosity diluent,
        KinematicViscosity mixture,
        Ratio oilUncertainty,
        Ratio diluentUncertainty,
        Ratio mixtureUncertainty,
        double chance
    )
    {
        var vOil = PhysicalRange.Centistokes(oil);
        var vDiluent = PhysicalRange.Centistokes(diluent);
        var vMixture = PhysicalRange.Centistokes(mixture);
        Guard.OpenUnitInterval(chance);
        if (Math.Abs(Math.Log(vDiluent / vOil)) < Math.Log(1.05))
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"oil is {vOil:G7} mm²/s, diluent is {vDiluent:G7} mm²/s; allowed: a ratio of 1.05 or more between them."
                ),
                nameof(diluent)
            );
        }

        var (wOil, wDiluent, wMixture) = (
            D341Scale.LogLogZ(vOil),
            D341Scale.LogLogZ(vDiluent),
            D341Scale.LogLogZ(vMixture)
        );
        var span = wDiluent - wOil;
        var f = (wMixture - wOil) / span;
        var fromOil = (1 - f) * Uncertainty(vOil, oilUncertainty, nameof(oilUncertainty));
        var fromDiluent = f * Uncertainty(vDiluent, diluentUncertainty, nameof(diluentUncertainty));
        var fromMixture = Uncertainty(vMixture, mixtureUncertainty, nameof(mixtureUncertainty));
        var standard =
            Math.Sqrt(fromOil * fromOil + fromDiluent * fromDiluent + fromMixture * fromMixture) / Math.Abs(span);
        var z = Normal.InvCDF(0, 1, 0.5 + chance / 2);
        return new OilDilution(f, standard, z);
    }

    /// <summary>The share with its interval, and what it shows.</summary>
    /// <returns>For example <c>4.7 % (2.9 to 6.5 %)</c>.</returns>
    public override string ToString()
    {
        var share =
            $"{PlainText.Number(Fraction.Percent, StandardUncertainty.Percent)} % ({PlainText.Number(Lowest.Percent, StandardUncertainty.Percent)} to {PlainText.Number(Highest.Percent, StandardUncertainty.Percent)} %)";
        return !IsExplained ? "not explained by this diluent"
            : IsDetected ? share
            : share + ", not distinguishable from none";
    }

    /// <summary>Uncertainty of W from a relative one of v.</summary>
    private static double Uncertainty(double viscosity, Ratio relative, string name) =>
        Guard.InRange(relative.DecimalFractions, 0, 0.5, "", name) * D341Scale.SlopePerLogViscosity(viscosity);

    private static double Cut(double fraction) => Math.Max(0, Math.Min(1, fraction));
}
