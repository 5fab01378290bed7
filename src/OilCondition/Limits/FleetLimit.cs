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
        var (given, missing) = Given(limit, readings);
        var source = Source.UserData(
            string.Format(
                CultureInfo.InvariantCulture,
                "percentile{0} {1} of the latest readings of {2} oil charges of {3} machines; {4}",
                given.Count > 1 ? "s" : "",
                string.Join(
                    " and ",
                    given.Keys.OrderBy(one => one).Select(one => one.ToString("0.##", CultureInfo.InvariantCulture))
                ),
                readings.Count,
                byMachine.Count,
                limit.Source.Text
            )
        );
        return limit.OfFleet(Band(limit.Upper, given), Band(limit.Lower, given), missing, source);
    }

    /// <summary>Each percentile by itself: one that is refused takes no other along.</summary>
    private static (Dictionary<double, double> Given, List<Limit.MissingFigure> Missing) Given(
        Limit limit,
        List<Reading> readings
    )
    {
        // Wherever the bounded readings lie, the percentile lies between those of all lower and of all upper ends.
        var (lowest, highest) = Outside(readings);
        var lowerEnds = Ends(readings, Qualifier.LessThan, lowest);
        var upperEnds = Ends(readings, Qualifier.GreaterThan, highest);
        var given = new Dictionary<double, double>();
        var missing = new List<Limit.MissingFigure>();
        foreach (var (side, zone, percentile) in Figures(limit))
        {
            var needed = SmallestCount(percentile);
            if (readings.Count < needed)
            {
                Miss(LimitReason.FleetTooSmall);
            }
            else if (
                Percentile(lowerEnds, percentile) is var figure
                && figure.Equals(Percentile(upperEnds, percentile))
            )
            {
                given[percentile] = figure;
            }
            else
            {
                Miss(LimitReason.FleetOnlyBounded);
            }

            void Miss(LimitReason reason) =>
                missing.Add(new Limit.MissingFigure(side, zone, percentile, reason, readings.Count, needed));
        }

        return (given, missing);
    }

    private static LimitBand? Band(LimitBand? percentiles, Dictionary<double, double> given)
    {
        double? Of(double? percentile) =>
            percentile is { } one && given.TryGetValue(one, out var figure) ? figure : null;
        var (alert, alarm) = (Of(percentiles?.Alert), Of(percentiles?.Alarm));
        return alert is null && alarm is null ? null : new LimitBand(alert, alarm);
    }

    private static double Percentile(double[] values, double percentile) =>
        Quantiles.Of(values, percentile / 100, Quantiles.Rule.Type6);

    /// <summary>The figures with those that are open towards one side put beyond all others there.</summary>
    private static double[] Ends(List<Reading> readings, Qualifier open, double beyond) =>
        [.. readings.Select(reading => reading.Qualifier == open ? beyond : reading.Value)];

    private static (double Lowest, double Highest) Outside(List<Reading> readings)
    {
        var lowest = readings.Select(reading => reading.Value).DefaultIfEmpty().Min();
        var highest = readings.Select(reading => reading.Value).DefaultIfEmpty().Max();
        return (lowest - 1 - Math.Abs(lowest), highest + 1 + Math.Abs(highest));
    }

    private static int SmallestCount(double percentile) =>
        ToleranceLimits.SmallestCount(Math.Max(percentile, 100 - percentile) / 100, Confidence);

    private static IEnumerable<(LimitSide Side, LimitState Zone, double Percentile)> Figures(Limit limit)
    {
        foreach (var (side, band) in new[] { (LimitSide.Upper, limit.Upper), (LimitSide.Lower, limit.Lower) })
        {
            if (band?.Alert is { } alert)
            {
                yield return (side, LimitState.Alert, alert);
            }

            if (band?.Alarm is { } alarm)
            {
                yield return (side, LimitState.Alarm, alarm);
            }
        }
    }

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
