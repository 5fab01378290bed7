namespace OilCondition.Cleanliness;

/// <summary>The balance of a well-mixed tank, c = level + (start − level) exp(−x) with x time constants: for water and for particles.</summary>
internal static class MixedTank
{
    /// <summary>The content after a number of time constants.</summary>
    public static double After(double start, double level, double timeConstants) =>
        level + ((start - level) * Math.Exp(-timeConstants));

    /// <summary>Time constants from a start down to a target above the level. A difference of logarithms: the quotient may overflow.</summary>
    public static double TimeConstantsTo(double start, double level, double target) =>
        Math.Log(start - level) - Math.Log(target - level);

    /// <summary>Share of the excess over the level that is gone, 1 − exp(−x); by tanh, which keeps the digits of a small x.</summary>
    public static double ShareGone(double timeConstants)
    {
        var half = Math.Tanh(timeConstants / 2);
        return 2 * half / (1 + half);
    }
}
