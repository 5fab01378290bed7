using MathNet.Numerics.RootFinding;

namespace OilCondition.Water;

/// <summary>Sublimation pressure of ice Ih: IAPWS R14-08(2011), equation (6), 50 to 273.16 K.</summary>
/// <remarks>ln(p / 611.657 Pa) = (1/θ) Σ a θ^b with θ = T / 273.16 K.</remarks>
internal static class IceSublimation
{
    public const double LowestKelvins = 50;
    public const double TriplePointKelvins = 273.16;
    public const double TriplePointPascal = 611.657;

    public static double Pascal(double kelvins) => TriplePointPascal * Math.Exp(LogRatio(kelvins));

    public static double Kelvins(double pascal)
    {
        var target = Math.Log(pascal / TriplePointPascal);
        return Brent.FindRoot(t => LogRatio(t) - target, LowestKelvins, TriplePointKelvins, 1e-10, 200);
    }

    private static double LogRatio(double kelvins)
    {
        var theta = kelvins / TriplePointKelvins;
        return (
                -21.2144006 * Math.Pow(theta, 0.00333333333)
                + 27.3203819 * Math.Pow(theta, 1.20666667)
                - 6.10598130 * Math.Pow(theta, 1.70333333)
            ) / theta;
    }
}
