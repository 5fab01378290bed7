using System.Diagnostics.CodeAnalysis;
using OilCondition.Statistics;

namespace OilCondition.Limits;

/// <summary>Turns percentiles of a machine's own history into figures of the reading.</summary>
internal static class OwnHistoryLimit
{
    /// <summary>Fewest earlier readings: below that the tolerance factor alone is beyond 3.5 for 99 %.</summary>
    public const int FewestReadings = 8;

    private const double Confidence = 0.9;

    public static bool TryFigures(
        Limit limit,
        MeasurandSeries series,
        [NotNullWhen(true)] out Limit? figures,
        out LimitReason reason
    )
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
        var trend = TrendAssessment.Of(
            Array.ConvertAll(earlier, i => days[i]),
            usual,
            options: new TrendOptions(series.Measurand.Scale)
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

        var transformed = Array.ConvertAll(usual, value => logarithmic ? Math.Log(value) : value);
        var mean = transformed.Average();
        var scatter = Math.Sqrt(transformed.Sum(value => (value - mean) * (value - mean)) / (transformed.Length - 1));

        // Readings rounded alike do not scatter by nothing: a last digit of r hides r / sqrt(12) in each of them and in the one to be judged.
        var lastDigit = Numbers.LastDigit(usual) / Math.Sqrt(6);
        scatter = Math.Max(scatter, logarithmic ? lastDigit / Math.Exp(mean) : lastDigit);
        double Figure(double percentile)
        {
            var side = percentile >= 50 ? 1 : -1;
            var content = side > 0 ? percentile / 100 : 1 - percentile / 100;
            var figure = mean + side * ToleranceLimits.NormalFactor(usual.Length, content, Confidence) * scatter;
            return logarithmic ? Math.Exp(figure) : figure;
        }

        figures = limit.AsAbsolute(Figure, limit.Source);
        return true;
    }
}
