using OilCondition.Guards;
using OilCondition.Statistics;

namespace OilCondition.Purification;

/// <summary>The exponential fall of a contaminant in a well-mixed charge, fitted to what was observed.</summary>
/// <remarks>
/// c(t) = floor + (start − floor) exp(−k t). In a kidney loop k = η Q / V with the single-pass efficiency η on the excess over the
/// floor, the flow Q and the charge volume V (mass balance of a well-mixed tank, derived). Readings are weighted equally.
/// </remarks>
public sealed class CleanupCurve
{
    /// <summary>Fewest readings for a curve: three constants and one to judge the scatter by.</summary>
    public const int FewestReadings = 4;

    private readonly DateTimeOffset origin;
    private readonly double[] hours;
    private readonly double[] values;
    private readonly ExponentialDecayFit fit;

    private CleanupCurve(DateTimeOffset origin, double[] hours, double[] values)
    {
        this.origin = origin;
        this.hours = hours;
        this.values = values;
        fit = ExponentialDecay.Fit(hours, values);
    }

    /// <summary>What the readings could tell.</summary>
    public ExponentialDecayStatus Status => fit.Status;

    /// <summary>Number of readings.</summary>
    public int Count => fit.Count;

    /// <summary>Value at the first reading, in the unit of the readings.</summary>
    public double Start => fit.Start;

    /// <summary>Where the curve levels off, in the unit of the readings; 0 or more.</summary>
    public double Floor => fit.Floor;

    /// <summary>Rate, k.</summary>
    public double RatePerHour => fit.Rate;

    /// <summary>Standard deviation of the readings about the curve.</summary>
    public double ResidualStandardDeviation => fit.ResidualStandardDeviation;

    /// <summary>How many time constants the readings span; below about two the floor is hardly known.</summary>
    public double ObservedTimeConstants => fit.ObservedTimeConstants;

    /// <summary>Fits the curve.</summary>
    /// <param name="moments">When the readings were taken; n moments in any order.</param>
    /// <param name="readings">The readings, all in one unit; n values.</param>
    /// <returns>The curve; its status says what it is worth.</returns>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite.</exception>
    public static CleanupCurve Fit(IReadOnlyList<DateTimeOffset> moments, IReadOnlyList<double> readings)
    {
        Guard.NotNull(moments, nameof(moments));
        Guard.NotNull(readings, nameof(readings));
        Guard.SameLength(readings.Count, moments.Count, nameof(readings), nameof(moments));
        var first = moments.DefaultIfEmpty().Min();
        var ordered = moments
            .Zip(readings, (at, value) => (Hours: (at - first).TotalHours, Value: value))
            .OrderBy(reading => reading.Hours)
            .ToList();
        return new CleanupCurve(
            first,
            [.. ordered.Select(reading => reading.Hours)],
            [.. ordered.Select(reading => reading.Value)]
        );
    }

    /// <summary>The curve at a moment.</summary>
    /// <param name="at">The moment.</param>
    /// <returns>The value, in the unit of the readings.</returns>
    public double ValueAt(DateTimeOffset at) => fit.ValueAt((at - origin).TotalHours);

    /// <summary>When the curve reaches a target.</summary>
    /// <param name="target">The value to reach, in the unit of the readings.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>One of the cases of <see cref="TimeToTarget"/>.</returns>
    public TimeToTarget TimeTo(double target, double confidence = 0.9)
    {
        Guard.Finite(target, "", nameof(target));
        Guard.OpenUnitInterval(confidence, nameof(confidence));
        if (fit.Status == ExponentialDecayStatus.TooFewReadings)
        {
            return new TimeToTarget.TooFewReadings(Count, FewestReadings);
        }

        if (fit.Start <= target)
        {
            return new TimeToTarget.Reached(origin);
        }

        var interval = ExponentialDecay.TimeToValue(fit, hours, values, target, confidence);
        if (interval.HasEstimate && interval.Estimate <= hours[hours.Length - 1])
        {
            return new TimeToTarget.Reached(Moment(interval.Estimate));
        }

        if (!interval.HasLower)
        {
            return new TimeToTarget.OutOfReach(fit.Floor);
        }

        return interval.HasEstimate && interval.HasUpper
            ? new TimeToTarget.Expected(Moment(interval.Lower), Moment(interval.Estimate), Moment(interval.Upper))
            : new TimeToTarget.NotDemonstrated(Moment(interval.Lower));
    }

    private DateTimeOffset Moment(double hoursFromOrigin) =>
        // Ten years of a cleanup are as good as never; the bound keeps the calendar in range.
        origin.AddHours(Math.Min(hoursFromOrigin, 24 * 3650));
}
