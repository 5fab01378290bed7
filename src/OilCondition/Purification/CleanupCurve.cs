using OilCondition.Guards;
using OilCondition.Statistics;

namespace OilCondition.Purification;

/// <summary>The exponential fall of a contaminant in a well-mixed charge, fitted to what was observed.</summary>
/// <remarks>
/// c(t) = floor + (start − floor) exp(−k t). In a kidney loop k = η Q / V with the single-pass efficiency η on the excess over the
/// floor, the flow Q and the charge volume V (mass balance of a well-mixed tank, derived). Without options readings are weighted equally.
/// </remarks>
public sealed class CleanupCurve
{
    /// <summary>Fewest readings for a curve: three constants and one to judge the scatter by.</summary>
    public const int FewestReadings = 4;

    private readonly double lastHour;
    private readonly ExponentialDecayAnalysis analysis;

    private CleanupCurve(
        DateTimeOffset origin,
        double[] hours,
        double[] values,
        IReadOnlyList<int> usedReadings,
        CleanupOptions options
    )
    {
        Origin = origin;
        lastHour = hours.DefaultIfEmpty().Max();
        UsedReadings = usedReadings;
        Options = options;
        analysis = ExponentialDecay.Analyze(hours, values, options.Decay);
    }

    /// <summary>What was known beforehand.</summary>
    public CleanupOptions Options { get; }

    /// <summary>Which readings were used, in order of time: positions, from 0, in the lists that were given.</summary>
    public IReadOnlyList<int> UsedReadings { get; }

    /// <summary>Where the curve begins: the given moment where the start is known, else the first reading used.</summary>
    public DateTimeOffset Origin { get; }

    /// <summary>What the readings could tell.</summary>
    public ExponentialDecayStatus Status => analysis.Fit.Status;

    /// <summary>Number of readings used.</summary>
    public int Count => analysis.Fit.Count;

    /// <summary>Value at <see cref="Origin"/>, in the unit of the readings.</summary>
    public double Start => analysis.Fit.Start;

    /// <summary>Where the curve levels off, in the unit of the readings; 0 or more.</summary>
    public double Floor => analysis.Fit.Floor;

    /// <summary>Rate, k.</summary>
    public double RatePerHour => analysis.Fit.Rate;

    /// <summary>
    /// Standard deviation of the readings about the curve: in their unit with constant noise, else as a fraction of the curve.
    /// </summary>
    public double ResidualStandardDeviation => analysis.Fit.ResidualStandardDeviation;

    /// <summary>How many time constants the readings span; below about two the floor is hardly known.</summary>
    public double ObservedTimeConstants => analysis.Fit.ObservedTimeConstants;

    /// <summary>The noise model that the residuals speak for; where it is not the one used, intervals are too narrow.</summary>
    public DecayNoise SuggestedNoise => analysis.SuggestedNoise;

    /// <summary>Correlation of each residual with the next (lag 1).</summary>
    public double ResidualAutocorrelation => analysis.ResidualAutocorrelation;

    /// <summary>Readings more than 3.5 standard deviations from the curve: positions, from 0, in the lists that were given.</summary>
    public IReadOnlyList<int> FlaggedReadings => [.. analysis.FlaggedReadings.Select(i => UsedReadings[i])];

    /// <summary>Fits the curve.</summary>
    /// <param name="moments">When the readings were taken; n moments in any order.</param>
    /// <param name="readings">The readings, all in one unit; n values.</param>
    /// <param name="options">What is known beforehand; null for constant noise and nothing known.</param>
    /// <returns>The curve; its status says what it is worth.</returns>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite, or not above 0 with logarithmic noise.</exception>
    public static CleanupCurve Fit(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<double> readings,
        CleanupOptions? options = null
    )
    {
        Guard.NotNull(moments, nameof(moments));
        Guard.NotNull(readings, nameof(readings));
        Guard.SameLength(readings.Count, moments.Count, nameof(readings), nameof(moments));
        foreach (var reading in readings)
        {
            Guard.Finite(reading, "", nameof(readings));
        }

        var known = options ?? CleanupOptions.Default;
        int[] used =
        [
            .. Enumerable
                .Range(0, moments.Count)
                .Where(i => known.StartedAt is not { } from || moments[i] >= from)
                .OrderBy(i => moments[i]),
        ];
        var first = used.Length == 0 ? known.StartedAt ?? default : moments[used[0]];
        var origin = known.Start.HasValue ? known.StartedAt ?? first : first;
        return new CleanupCurve(
            origin,
            [.. used.Select(i => (moments[i] - origin).TotalHours)],
            [.. used.Select(i => readings[i])],
            used,
            known
        );
    }

    /// <summary>Interval for the rate, in 1/h.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval; a missing end is named by its outcome.</returns>
    public ProfileInterval RateIntervalPerHour(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        analysis.Rate(confidence, side);

    /// <summary>Interval for the half-life of the excess over the floor, in hours.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval; a missing end is named by its outcome.</returns>
    public ProfileInterval HalfLifeIntervalHours(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        analysis.HalfLife(confidence, side);

    /// <summary>Interval for the floor, in the unit of the readings.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval, never below 0; a missing end is named by its outcome.</returns>
    public ProfileInterval FloorInterval(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        analysis.Floor(confidence, side);

    /// <summary>The curve at a moment.</summary>
    /// <param name="at">The moment; before <see cref="Origin"/> the curve is extended backwards.</param>
    /// <returns>The value, in the unit of the readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment is more than 200 time constants before the origin.</exception>
    public double ValueAt(DateTimeOffset at) => analysis.Fit.ValueAt((at - Origin).TotalHours);

    /// <summary>Interval for the curve at a moment, in the unit of the readings.</summary>
    /// <param name="at">The moment, not before <see cref="Origin"/>.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment is before the origin.</exception>
    public ProfileInterval IntervalAt(
        DateTimeOffset at,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    ) => analysis.ValueAt((at - Origin).TotalHours, confidence, side);

    /// <summary>When the curve reaches a target.</summary>
    /// <param name="target">The value to reach, in the unit of the readings.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>One of the cases of <see cref="TimeToTarget"/>.</returns>
    public TimeToTarget TimeTo(double target, double confidence = 0.9)
    {
        Guard.Finite(target, "", nameof(target));
        Guard.OpenUnitInterval(confidence, nameof(confidence));
        if (analysis.Fit.Status == ExponentialDecayStatus.TooFewReadings)
        {
            return new TimeToTarget.TooFewReadings(Count, Options.FewestReadings);
        }

        if (analysis.Fit.Start <= target)
        {
            // A run that began below the target and rises past it is not done.
            return analysis.Fit.Status == ExponentialDecayStatus.Rising && analysis.Fit.Floor > target
                ? new TimeToTarget.OutOfReach(analysis.Fit.Floor)
                : new TimeToTarget.Reached(Origin);
        }

        var interval = analysis.TimeTo(target, confidence);
        if (interval.HasEstimate && interval.Estimate <= lastHour)
        {
            return new TimeToTarget.Reached(Moment(interval.Estimate));
        }

        if (!interval.HasLower)
        {
            return new TimeToTarget.OutOfReach(analysis.Fit.Floor);
        }

        return interval.HasEstimate && interval.HasUpper
            ? new TimeToTarget.Expected(Moment(interval.Lower), Moment(interval.Estimate), Moment(interval.Upper))
            : new TimeToTarget.NotDemonstrated(Moment(interval.Lower));
    }

    private DateTimeOffset Moment(double hoursFromOrigin) =>
        // Ten years of a cleanup are as good as never; the bound keeps the calendar in range.
        Origin.AddHours(Math.Min(hoursFromOrigin, 24 * 3650));
}
