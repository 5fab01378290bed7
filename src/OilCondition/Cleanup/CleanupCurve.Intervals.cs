using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <content>Intervals and the time to a target.</content>
public sealed partial class CleanupCurve
{
    /// <summary>Ten years of a cleanup are as good as never; the bound keeps the calendar in range.</summary>
    private const double LongestHours = 24 * 3650;

    /// <summary>Interval for the rate, in 1/h, of the profile likelihood.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval; a missing end is named by its outcome.</returns>
    public Interval RateIntervalPerHour(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        fall.RateInterval(confidence, side);

    /// <summary>Interval for the half-life of the excess over the floor, in hours, of the profile likelihood.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval; a missing end is named by its outcome.</returns>
    public Interval HalfLifeIntervalHours(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        fall.HalfLifeInterval(confidence, side);

    /// <summary>Interval for the floor, in the unit of the readings, of the profile likelihood.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval, never below 0; a missing end is named by its outcome.</returns>
    public Interval FloorInterval(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        fall.FloorInterval(confidence, side);

    /// <summary>Interval for the curve at a moment, in the unit of the readings, of the profile likelihood.</summary>
    /// <param name="at">The moment, not before <see cref="Origin"/>.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment is before the origin.</exception>
    public Interval IntervalAt(DateTimeOffset at, double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        fall.ValueInterval(HoursTo(at), confidence, side);

    /// <summary>Band at a moment for the curve itself or for one new reading, in the unit of the readings.</summary>
    /// <remarks>
    /// By the delta method (<see cref="ExponentialDecayFit.BandAt"/>); with constant noise it may reach below 0 and is not clipped. With
    /// readings below a limit the band of the curve is of the profile likelihood and the scatter adds to it as errors add.
    /// </remarks>
    /// <param name="at">The moment, not before <see cref="Origin"/>.</param>
    /// <param name="of">The curve, or one new reading: the band to judge the next sample by.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The band.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment is before the origin.</exception>
    public Interval BandAt(
        DateTimeOffset at,
        BandKind of,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    ) => fall.Band(Guard.NotNegative(HoursTo(at), "h from the origin", nameof(at)), of, confidence, side);

    /// <summary>When the curve reaches a target.</summary>
    /// <param name="target">The value to reach, in the unit of the readings.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends; Upper for 'done by'; Lower for 'not before'.</param>
    /// <returns>One of the cases of <see cref="TimeToTarget"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target is not finite, or the level outside its range.</exception>
    public TimeToTarget TimeTo(double target, double confidence = 0.9, IntervalSide side = IntervalSide.Both)
    {
        Guard.Finite(target, "");
        var interval = fall.TimeTo(target, confidence, side);
        var basis = new TimeToTarget.Basis(confidence, side, CoverageInDoubt, ObservedTimeConstants);
        switch (Status)
        {
            case ExponentialDecayStatus.TooFewReadings:
                return new TimeToTarget.TooFewReadings(basis, Count, Options.FewestReadings);
            case ExponentialDecayStatus.TooFewAboveLimit:
                return new TimeToTarget.TooFewAboveLimit(basis, AboveLimitCount, Options.FewestReadings);
            case ExponentialDecayStatus.Rising when Start <= target && Floor > target:
                // A run that began below the target and rises past it is not done.
                return new TimeToTarget.OutOfReach(basis, Floor);
        }

        if (Start <= target)
        {
            return new TimeToTarget.Reached(basis, Origin, IsShownBelow(target, confidence, side));
        }

        if (interval.HasEstimate && interval.Estimate <= HoursTo(LastReadingAt))
        {
            return new TimeToTarget.Reached(basis, Moment(interval.Estimate), IsShownBelow(target, confidence, side));
        }

        if (interval.Outcome == TimeToValueOutcome.NeverReached)
        {
            return new TimeToTarget.OutOfReach(basis, Floor);
        }

        if (side == IntervalSide.Lower)
        {
            return new TimeToTarget.NotBefore(
                basis,
                Moment(interval.Lower),
                interval.HasEstimate,
                Moment(interval.Estimate)
            );
        }

        if (!interval.HasEstimate || !interval.HasUpper)
        {
            var earliest = side == IntervalSide.Both ? interval : fall.TimeTo(target, confidence, IntervalSide.Lower);
            return new TimeToTarget.NotDemonstrated(basis, Moment(earliest.Lower));
        }

        var (estimate, latest) = (Moment(interval.Estimate), Moment(interval.Upper));
        return side == IntervalSide.Upper
            ? new TimeToTarget.DoneBy(basis, estimate, latest)
            : new TimeToTarget.Expected(basis, Moment(interval.Lower), estimate, latest);
    }

    /// <summary>The late end of the time to a target, also where the best curve has passed it; none where that is not demonstrated.</summary>
    internal bool TryLatest(double target, double confidence, IntervalSide side, out DateTimeOffset latest)
    {
        var interval = fall.TimeTo(target, confidence, side);
        latest = Moment(interval.Upper);
        return interval.HasUpper;
    }

    /// <summary>Whether the upper end of the curve at the last reading is at the target or below; one-sided, at the doubt of one end.</summary>
    private bool IsShownBelow(double target, double confidence, IntervalSide side)
    {
        var oneSided = side == IntervalSide.Both ? 0.5 + confidence / 2 : confidence;
        var now = fall.ValueInterval(Math.Max(0, HoursTo(LastReadingAt)), oneSided, IntervalSide.Upper);
        return now.Upper <= target;
    }

    private DateTimeOffset Moment(double hoursFromOrigin) => Origin.AddHours(Math.Min(hoursFromOrigin, LongestHours));
}
