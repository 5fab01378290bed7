namespace OilCondition;

/// <summary>How fast a trend goes, with as many digits as the interval of its slope bears.</summary>
internal static class TrendPace
{
    private const double Days = 30;

    public static EvidenceItem Evidence(SeriesTrend trend) =>
        IsFactor(trend)
            ? EvidenceItem.Number("factor-per-30-days", Factor(trend), "")
            : EvidenceItem.Number("change-per-30-days", Change(trend), Unit(trend), Uncertainty(trend)) with
            {
                IsDifference = true,
            };

    public static bool IsFactor(SeriesTrend trend) => trend.Assessment.Scale == NaturalScale.Logarithmic;

    public static string Unit(SeriesTrend trend) => trend.Series.Measurand.Unit;

    public static double Change(SeriesTrend trend) => Days * trend.Assessment.Slope;

    public static double Factor(SeriesTrend trend) => Math.Exp(Change(trend));

    /// <summary>Half the width of the interval; null where an end is missing.</summary>
    public static double? Uncertainty(SeriesTrend trend)
    {
        var slope = trend.Assessment.SlopeInterval;
        return Days * (slope.Upper - slope.Lower) / 2;
    }
}
