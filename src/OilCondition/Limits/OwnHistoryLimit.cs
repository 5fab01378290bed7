using OilCondition.Sampling;
using OilCondition.Statistics;

namespace OilCondition.Limits;

/// <summary>Turns percentiles of a machine's own history into figures of the reading.</summary>
internal static class OwnHistoryLimit
{
    /// <summary>Fewest earlier readings: below that the tolerance factor alone is beyond 3.5 for 99 %.</summary>
    public const int FewestReadings = 8;

    private const double Confidence = 0.9;

    public static bool TryFigures(Limit limit, MeasurandSeries series, out Limit? figures, out LimitReason reason)
    {
        figures = null;
        reason = LimitReason.TooFewReadings;
        var logarithmic = series.Measurand.Scale == NaturalScale.Logarithmic;
        var (days, values) = series.ToColumns();

        // What is to be judged must not be part of the yardstick.
        var earlier = Enumerable
            .Range(0, Math.Max(0, values.Length - limit.Confirmations))
            .Where(i => !logarithmic || values[i] > 0)
            .ToArray();
        if (earlier.Length < FewestReadings)
        {
            return false;
        }

        var usual = Array.ConvertAll(earlier, i => values[i]);
        var scale = logarithmic ? ValueScale.Logarithmic : ValueScale.Natural;
        var trend = TrendAssessor.Assess(
            Array.ConvertAll(earlier, i => days[i]),
            usual,
            options: new TrendOptions(scale)
        );
        if (trend.Verdict is TrendVerdict.Rising or TrendVerdict.Falling)
        {
            reason = LimitReason.HistoryMoves;
            return false;
        }

        usual = [.. trend.Used.Select(i => usual[i])];
        if (usual.Length < FewestReadings)
        {
            return false;
        }

        double Figure(double percentile)
        {
            var upper = percentile > 50;
            var content = upper ? percentile / 100 : 1 - percentile / 100;
            var side = upper ? ToleranceSide.Upper : ToleranceSide.Lower;
            return ToleranceLimits.Normal(usual, content, Confidence, side, scale).Value;
        }

        figures = limit.AsAbsolute(Figure, limit.Source);
        return true;
    }
}
