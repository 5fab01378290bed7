namespace OilCondition.Statistics;

/// <summary>Lag-1 correlation of the scatter behind residuals, which read low because the fit has taken out what it could.</summary>
internal static class ResidualCorrelation
{
    /// <summary>Residuals tell something about it from here on.</summary>
    public const int LeastCount = 8;

    /// <summary>
    /// The estimate less its bias. About a mean r falls short by (1 + 4ρ)/n (Kendall 1954); each further fitted part takes about 1/n more.
    /// Negative values are taken as 0: they would narrow intervals, and short series give them by chance.
    /// </summary>
    public static double Corrected(ReadOnlySpan<double> residuals, int fittedParts)
    {
        var n = residuals.Length;
        if (n < LeastCount)
        {
            return 0;
        }

        var corrected = (LagOne(residuals) + (double)fittedParts / n) / (1 - 4.0 / n);
        return Math.Min(Math.Max(corrected, 0), 0.95);
    }

    private static double LagOne(ReadOnlySpan<double> residuals) =>
        SerialCorrelation.LagOne(residuals, Numbers.Mean(residuals));
}
