using MathNet.Numerics.RootFinding;
using OilCondition.Text;

namespace OilCondition.Viscosity;

/// <summary>The double-logarithmic viscosity scale of ASTM D341; viscosities in mm²/s, exponentials to base e.</summary>
internal static class D341Scale
{
    public static double Z(double viscosity, D341Form form = D341Form.Simplified) =>
        form == D341Form.General ? GeneralZ(viscosity) : SimplifiedZ(viscosity);

    public static double ViscosityOf(double z, D341Form form = D341Form.Simplified) =>
        form == D341Form.General ? GeneralViscosityOf(z) : SimplifiedViscosityOf(z);

    public static double LogLogZ(double viscosity, D341Form form = D341Form.Simplified) =>
        Math.Log10(Math.Log10(Z(viscosity, form)));

    /// <summary>dW/d ln v of the simplified form: how far log10 log10 Z moves for a relative change of viscosity.</summary>
    public static double SlopePerLogViscosity(double viscosity)
    {
        var z = SimplifiedZ(viscosity);
        var slopeOfZ = 1 - (z - viscosity - 0.7) * (1.84 + 1.02 * viscosity);
        return viscosity * slopeOfZ / (z * Math.Log(z) * Math.Log(10));
    }

    /// <summary>The viscosity, or the nearer end of the scale where it lies beyond.</summary>
    public static double At(double logLogZ, D341Form form = D341Form.Simplified) =>
        IsThicker(logLogZ, form) ? PhysicalRange.HighestCentistokes
        : IsThinner(logLogZ, form) ? PhysicalRange.LowestCentistokes
        : ViscosityOf(Math.Pow(10, Math.Pow(10, logLogZ)), form);

    public static bool IsThicker(double logLogZ, D341Form form) =>
        logLogZ > LogLogZ(PhysicalRange.HighestCentistokes, form);

    public static bool IsThinner(double logLogZ, D341Form form) =>
        logLogZ < LogLogZ(PhysicalRange.LowestCentistokes, form);

    /// <summary>Z = v + 0.7 + exp(−1.47 − 1.84 v − 0.51 v²).</summary>
    private static double SimplifiedZ(double v) => v + 0.7 + Math.Exp(-1.47 - 1.84 * v - 0.51 * v * v);

    /// <summary>v = x − exp(−0.7487 − 3.295 x + 0.6119 x² − 0.3193 x³), x = Z − 0.7.</summary>
    private static double SimplifiedViscosityOf(double z)
    {
        var x = z - 0.7;
        return x - Math.Exp(-0.7487 - 3.295 * x + 0.6119 * x * x - 0.3193 * x * x * x);
    }

    /// <summary>
    /// Z = v + 0.7 + C − D + E − F + G − H. All terms are kept: above the limits to which the standard has them they are below what it rounds to,
    /// and without a step Z can be turned round.
    /// </summary>
    private static double GeneralZ(double v) =>
        v
        + 0.7
        + Math.Exp(-1.14883 - 2.65868 * v)
        - Math.Exp(-0.0038138 - 12.5645 * v)
        + Math.Exp(5.46491 - 37.6289 * v)
        - Math.Exp(13.0458 - 74.6851 * v)
        + Math.Exp(37.4619 - 192.643 * v)
        - Math.Exp(80.4945 - 400.468 * v);

    /// <summary>Brent's method; the form has no inverse of its own. Above 10 mm²/s the exponentials are below 1e−12.</summary>
    private static double GeneralViscosityOf(double z)
    {
        const double WithoutTerms = 10;
        return z >= WithoutTerms + 0.7
            ? z - 0.7
            : Brent.FindRoot(
                v => GeneralZ(v) - z,
                PhysicalRange.LowestCentistokes - 1e-6,
                WithoutTerms + 1e-6,
                1e-13,
                200
            );
    }
}
