namespace OilCondition.Statistics;

/// <summary>Whether residuals follow one another in time.</summary>
internal static class Autocorrelation
{
    /// <summary>The normal deviate that one series of twenty exceeds.</summary>
    private const double OneInTwenty = 1.6448536269514722;

    /// <summary>Correlation of each residual with the next (lag 1), about zero.</summary>
    public static double LagOne(ReadOnlySpan<double> residuals)
    {
        double products = 0;
        double squares = 0;
        double before = 0;
        foreach (var residual in residuals)
        {
            products += residual * before;
            squares += residual * residual;
            before = residual;
        }

        return squares > 0 ? products / squares : 0;
    }

    /// <summary>Whether independent scatter would show as much in fewer than one series of twenty.</summary>
    public static bool IsDoubtful(double lagOne, int count) => count > 0 && lagOne > OneInTwenty / Math.Sqrt(count);
}
