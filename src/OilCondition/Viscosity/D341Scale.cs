using OilCondition.Guards;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>The double-logarithmic viscosity scale of ASTM D341 in its simplified form; viscosities in mm²/s, exponentials to base e.</summary>
internal static class D341Scale
{
    /// <summary>Ends of the scale, mm²/s; from memory.</summary>
    public const double LowestCentistokes = 0.21;
    public const double HighestCentistokes = 2e7;

    public static double Centistokes(KinematicViscosity viscosity, string name) =>
        Guard.InRange(viscosity.Centistokes, LowestCentistokes, HighestCentistokes, "mm²/s", name);

    /// <summary>Z = v + 0.7 + exp(−1.47 − 1.84 v − 0.51 v²).</summary>
    public static double Z(double viscosity) =>
        viscosity + 0.7 + Math.Exp(-1.47 - 1.84 * viscosity - 0.51 * viscosity * viscosity);

    /// <summary>v = x − exp(−0.7487 − 3.295 x + 0.6119 x² − 0.3193 x³), x = Z − 0.7.</summary>
    public static double ViscosityOf(double z)
    {
        var x = z - 0.7;
        return x - Math.Exp(-0.7487 - 3.295 * x + 0.6119 * x * x - 0.3193 * x * x * x);
    }

    public static double LogLogZ(double viscosity) => Math.Log10(Math.Log10(Z(viscosity)));

    /// <summary>dW/d ln v: how far log10 log10 Z moves for a relative change of viscosity.</summary>
    public static double SlopePerLogViscosity(double viscosity)
    {
        var z = Z(viscosity);
        var slopeOfZ = 1 - (z - viscosity - 0.7) * (1.84 + 1.02 * viscosity);
        return viscosity * slopeOfZ / (z * Math.Log(z) * Math.Log(10));
    }

    public static double ViscosityOfLogLog(double logLogZ) => ViscosityOf(Math.Pow(10, Math.Pow(10, logLogZ)));

    /// <summary>The viscosity, or the nearer end of the scale with the word for it.</summary>
    public static (KinematicViscosity Viscosity, ScaleOutcome Outcome) PointAt(double logLogZ) =>
        logLogZ > LogLogZ(HighestCentistokes) ? (Of(HighestCentistokes), ScaleOutcome.ThickerThanScale)
        : logLogZ < LogLogZ(LowestCentistokes) ? (Of(LowestCentistokes), ScaleOutcome.ThinnerThanScale)
        : (Of(ViscosityOfLogLog(logLogZ)), ScaleOutcome.OnScale);

    private static KinematicViscosity Of(double centistokes) => KinematicViscosity.FromCentistokes(centistokes);
}
