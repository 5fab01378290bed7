using System.Globalization;
using OilCondition.Sampling;
using OilCondition.Sources;
using OilCondition.Statistics;

namespace OilCondition.Limits;

/// <summary>Turns percentiles of a fleet into figures of the reading.</summary>
internal static class FleetLimit
{
    /// <summary>With this confidence the most extreme of the fleet's readings must lie beyond the percentile, or it is refused.</summary>
    private const double Confidence = 0.9;

    public static Limit Resolve(Limit limit, IReadOnlyList<OilHistory> fleet)
    {
        if (limit.Kind != LimitKind.Fleet)
        {
            return limit;
        }

        var byMachine = fleet
            .Select(history => Readings(history, limit.Measurand))
            .Where(readings => readings.Count > 0)
            .ToList();
        var values = byMachine.SelectMany(readings => readings).ToArray();
        var needed = Figures(limit).Max(SmallestCount);
        if (values.Length < needed)
        {
            return limit;
        }

        var source = Source.UserData(
            string.Format(
                CultureInfo.InvariantCulture,
                "percentiles {0} of {1} readings of {2} machines; {3}",
                string.Join(" and ", Figures(limit).Select(one => one.ToString("0.##", CultureInfo.InvariantCulture))),
                values.Length,
                byMachine.Count,
                limit.Source.Text
            )
        );
        return limit.AsAbsolute(percentile => Quantiles.Of(values, percentile / 100, QuantileRule.Type6), source);
    }

    private static int SmallestCount(double percentile) =>
        ToleranceLimits.SmallestCount(Math.Max(percentile, 100 - percentile) / 100, Confidence);

    private static IEnumerable<double> Figures(Limit limit) =>
        new[] { limit.Lower?.Alarm, limit.Lower?.Alert, limit.Upper?.Alert, limit.Upper?.Alarm }.OfType<double>();

    private static List<double> Readings(OilHistory history, Measurand measurand) =>
        [
            .. history
                .Samples.Where(sample => !history.IsSuspect(sample) && sample.Readings.ContainsKey(measurand))
                .Select(sample => sample.Readings[measurand].Value),
        ];
}
