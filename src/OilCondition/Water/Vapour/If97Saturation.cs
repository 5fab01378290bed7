namespace OilCondition.Water;

/// <summary>Saturation line of liquid water: region 4 of IAPWS R7-97(2012), 273.15 to 647.096 K.</summary>
internal static class If97Saturation
{
    public const double LowestKelvins = 273.15;
    public const double HighestKelvins = 647.096;
    public const double HighestPascal = 22.064e6;

    /// <summary>Specific gas constant of water in J/(kg K), equation (1) of the release.</summary>
    public const double GasConstant = 461.526;

    private const double N1 = 1167.0521452767;
    private const double N2 = -724213.16703206;
    private const double N3 = -17.073846940092;
    private const double N4 = 12020.824702470;
    private const double N5 = -3232555.0322333;
    private const double N6 = 14.915108613530;
    private const double N7 = -4823.2657361591;
    private const double N8 = 405113.40542057;
    private const double N9 = -0.23855557567849;
    private const double N10 = 650.17534844798;

    /// <summary>Equation (30).</summary>
    public static double Pascal(double kelvins)
    {
        var theta = kelvins + N9 / (kelvins - N10);
        var a = theta * theta + N1 * theta + N2;
        var b = N3 * theta * theta + N4 * theta + N5;
        var c = N6 * theta * theta + N7 * theta + N8;
        var root = 2 * c / (-b + Math.Sqrt(b * b - 4 * a * c));
        return root * root * root * root * 1e6;
    }

    /// <summary>Equation (31).</summary>
    public static double Kelvins(double pascal)
    {
        var beta = Math.Sqrt(Math.Sqrt(pascal * 1e-6));
        var e = beta * beta + N3 * beta + N6;
        var f = N1 * beta * beta + N4 * beta + N7;
        var g = N2 * beta * beta + N5 * beta + N8;
        var d = 2 * g / (-f - Math.Sqrt(f * f - 4 * e * g));
        var sum = N10 + d;
        return (sum - Math.Sqrt(sum * sum - 4 * (N9 + N10 * d))) / 2;
    }
}
