using OilCondition.Guards;
using OilCondition.Sampling;
using OilCondition.Statistics;

namespace OilCondition.Prognosis;

/// <summary>Forecasts when a measurand crosses a limit.</summary>
public static class LifeForecast
{
    /// <summary>Fewest readings for a straight line with an interval worth acting on.</summary>
    public const int FewestReadings = 5;

    private const double LongestDays = 30 * 365.25;

    private static readonly double[] Chances = [0.1, 0.5, 0.9];

    /// <summary>Forecasts by a straight line.</summary>
    /// <remarks>
    /// Censored readings do not enter the line. On a logarithmic measurand the line is fitted to ln(value), and readings of 0 do not enter.
    /// Dates later than 30 years from now count as never: no oil charge lives that long.
    /// </remarks>
    /// <param name="series">The readings since the last oil change or treatment.</param>
    /// <param name="limit">The limit, in the measurand's unit; above 0 for a logarithmic measurand.</param>
    /// <param name="side">On which side it lies.</param>
    /// <param name="asOf">Now.</param>
    /// <returns>One of the cases of <see cref="RemainingLife"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite, or not above 0 for a logarithmic measurand.</exception>
    public static RemainingLife StraightLine(MeasurandSeries series, double limit, LimitSide side, DateTimeOffset asOf)
    {
        Guard.NotNull(series, nameof(series));
        var logarithmic = series.Measurand.Scale == NaturalScale.Logarithmic;
        var scaledLimit = logarithmic
            ? Math.Log(Guard.Positive(limit, series.Measurand.Unit, nameof(limit)))
            : Guard.Finite(limit, series.Measurand.Unit, nameof(limit));
        var sign = side == LimitSide.Upper ? 1 : -1;
        var (days, values) = series.ToColumns();
        var usable = days.Zip(values, (day, value) => (Day: day, Value: value))
            .Where(point => !logarithmic || point.Value > 0)
            .ToList();
        if (series.Points.Count > 0 && IsBeyond(series.Points[series.Points.Count - 1].Reading, limit, side))
        {
            return new RemainingLife.AlreadyCrossed(series, limit);
        }

        if (usable.Count < FewestReadings)
        {
            return new RemainingLife.TooFewReadings(series, limit, usable.Count, FewestReadings);
        }

        var positions = usable.Select(point => point.Day).ToArray();
        var scaled = usable.Select(point => logarithmic ? Math.Log(point.Value) : point.Value).ToArray();
        var trend = Statistics.StraightLine.Fit(positions, scaled);

        // Mirrored for a lower limit, so that the line always has to rise to the limit.
        var towards =
            side == LimitSide.Upper
                ? trend
                : Statistics.StraightLine.Fit(positions, [.. scaled.Select(value => -value)]);
        return towards.Status == StraightLineStatus.Determined && towards.Slope > 0
            ? Quantiles(series, limit, trend, towards, sign * scaledLimit, asOf)
            : new RemainingLife.NotApproaching(series, limit);
    }

    private static RemainingLife Quantiles(
        MeasurandSeries series,
        double limit,
        StraightLineFit trend,
        StraightLineFit towards,
        double scaledLimit,
        DateTimeOffset asOf
    )
    {
        var now = series.DaysAt(asOf);
        var crossedNow = towards.ChanceAbove(now, scaledLimit, CrossingOf.NewReading);
        var found = new List<LifeQuantile>();
        foreach (var chance in Chances)
        {
            // Conditional on not being crossed now: F(t) = F(now) + chance (1 − F(now)).
            var unconditional = crossedNow + chance * (1 - crossedNow);
            if (
                unconditional >= 1
                || !towards.TryCrossing(scaledLimit, unconditional, CrossingOf.NewReading, out var day)
                || day - now > LongestDays
            )
            {
                break;
            }

            found.Add(new LifeQuantile(chance, asOf.AddDays(Math.Max(0, day - now))));
        }

        return found.Count switch
        {
            0 => new RemainingLife.NotApproaching(series, limit),
            3 => new RemainingLife.Crosses(series, limit, trend, [.. found]),
            _ => new RemainingLife.LateEndOpen(series, limit, trend, found[0]),
        };
    }

    private static bool IsBeyond(Reading reading, double limit, LimitSide side) =>
        side == LimitSide.Upper
            ? reading.Qualifier != Qualifier.LessThan && reading.Value > limit
            : reading.Qualifier != Qualifier.GreaterThan && reading.Value < limit;
}
