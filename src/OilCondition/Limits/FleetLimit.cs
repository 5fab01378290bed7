using System.Globalization;
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
            .Select(history => LatestOfCharges(history, limit.Measurand))
            .Where(readings => readings.Count > 0)
            .ToList();
        var readings = byMachine.SelectMany(one => one).ToList();
        if (readings.Count < Figures(limit).Max(SmallestCount))
        {
            return limit;
        }

        // Wherever the bounded readings lie, the percentile lies between those of all lower and of all upper ends.
        var (lowest, highest) = Outside(readings);
        var lowerEnds = Ends(readings, Qualifier.LessThan, lowest);
        var upperEnds = Ends(readings, Qualifier.GreaterThan, highest);
        if (
            !Figures(limit)
                .All(percentile => Percentile(lowerEnds, percentile).Equals(Percentile(upperEnds, percentile)))
        )
        {
            return limit.RefusedBecause(LimitReason.FleetOnlyBounded);
        }

        var source = Source.UserData(
            string.Format(
                CultureInfo.InvariantCulture,
                "percentiles {0} of the latest readings of {1} oil charges of {2} machines; {3}",
                string.Join(" and ", Figures(limit).Select(one => one.ToString("0.##", CultureInfo.InvariantCulture))),
                readings.Count,
                byMachine.Count,
                limit.Source.Text
            )
        );
        return limit.AsAbsolute(percentile => Percentile(lowerEnds, percentile), source);
    }

    private static double Percentile(double[] values, double percentile) =>
        Quantiles.Of(values, percentile / 100, Quantiles.Rule.Type6);

    /// <summary>The figures with those that are open towards one side put beyond all others there.</summary>
    private static double[] Ends(List<Reading> readings, Qualifier open, double beyond) =>
        [.. readings.Select(reading => reading.Qualifier == open ? beyond : reading.Value)];

    private static (double Lowest, double Highest) Outside(List<Reading> readings)
    {
        var lowest = readings.Min(reading => reading.Value);
        var highest = readings.Max(reading => reading.Value);
        return (lowest - 1 - Math.Abs(lowest), highest + 1 + Math.Abs(highest));
    }

    private static int SmallestCount(double percentile) =>
        ToleranceLimits.SmallestCount(Math.Max(percentile, 100 - percentile) / 100, Confidence);

    private static IEnumerable<double> Figures(Limit limit) =>
        new[] { limit.Lower?.Alarm, limit.Lower?.Alert, limit.Upper?.Alert, limit.Upper?.Alarm }.OfType<double>();

    private static List<Reading> LatestOfCharges(OilHistory history, Measurand measurand) =>
        [
            .. history
                .SamplesByCharge()
                .Select(charge =>
                    charge.LastOrDefault(sample => !history.IsSuspect(sample) && sample.Readings.ContainsKey(measurand))
                )
                .OfType<OilSample>()
                .Select(sample => sample.Readings[measurand]),
        ];
}
