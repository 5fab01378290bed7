using OilCondition.Prognosis;

namespace OilCondition;

/// <summary>How fast a trend goes, with as many digits as the interval of its slope bears.</summary>
internal static class TrendPace
{
    private const double Days = 30;

    /// <summary>What lies farther ahead is not told with dates.</summary>
    private const double FarDays = 5 * 365.25;

    /// <summary>A chance of having been passed unseen that is too small to change what is said of the pace (ours).</summary>
    private const double HardlyPassed = 0.05;

    public static EvidenceItem Evidence(SeriesTrend trend) =>
        IsFactor(trend)
            ? EvidenceItem.Number("factor-per-30-days", Factor(trend), "")
            : EvidenceItem.Number("change-per-30-days", Change(trend), Unit(trend), Uncertainty(trend)) with
            {
                IsDifference = true,
            };

    public static bool IsFactor(SeriesTrend trend) => trend.Assessment.Scale == NaturalScale.Logarithmic;

    /// <summary>Whether the forecast has it reach its limit in less than half the time that its mean pace would take, and a month sooner at least.</summary>
    public static bool IsFasterOfLate(SeriesTrend trend, RemainingLife.Forecast life) =>
        DaysByMeanPace(trend, life) is { } days
        && life.Crossing.TryAt(0.5, out var middle)
        && (middle - life.Crossing.LastReadingAt).TotalDays is var expected
        && days > 2 * expected
        && days > expected + Days;

    /// <summary>Whether the forecast takes more than twice the time that the mean pace would, where that lies within what is planned for.</summary>
    public static bool IsSlowerAhead(SeriesTrend trend, RemainingLife.Forecast life) =>
        DaysByMeanPace(trend, life) is { } days
        && days < FarDays
        && life.Crossing.ChanceUnseenBefore(life.Crossing.AsOf) < HardlyPassed
        && !(
            life.Crossing.TryAt(0.5, out var middle)
            && (middle - life.Crossing.LastReadingAt).TotalDays <= 2 * days + Days
        );

    /// <summary>How long the mean pace takes to the limit from where the line through the readings stands at the last one; null where it leads away.</summary>
    private static double? DaysByMeanPace(SeriesTrend trend, RemainingLife.Forecast life)
    {
        var (isLog, slope) = (IsFactor(trend), trend.Assessment.Slope);
        var last = (life.Crossing.LastReadingAt - life.Series.Origin).TotalDays;
        var ahead = (isLog ? Math.Log(life.Limit) : life.Limit) - life.Trend.ValueAt(last);
        return slope != 0 && ahead / slope is > 0 and var days && slope > 0 == (life.Side == LimitSide.Upper)
            ? days
            : null;
    }

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
