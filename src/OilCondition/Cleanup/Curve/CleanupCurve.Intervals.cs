using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <content>Intervals and the time to a target.</content>
public sealed partial class CleanupCurve
{
    /// <summary>Ten years of a cleanup are as good as never; the bound keeps the calendar in range.</summary>
    private const double LongestHours = 24 * 3650;

    /// <summary>Interval for the rate, in 1/h, of the profile likelihood.</summary>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The interval; a missing end is named by its outcome.</returns>
    public Interval RateIntervalPerHour(double confidence = 0.9) => fall.RateInterval(confidence, IntervalSide.Both);

    /// <summary>Interval for the half-life of the excess over the floor, in hours, of the profile likelihood.</summary>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The interval; a missing end is named by its outcome.</returns>
    public Interval HalfLifeIntervalHours(double confidence = 0.9) =>
        fall.HalfLifeInterval(confidence, IntervalSide.Both);

    /// <summary>Interval for the floor, in the unit of the readings, of the profile likelihood.</summary>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The interval, never below 0; a missing end is named by its outcome.</returns>
    public Interval FloorInterval(double confidence = 0.9) => fall.FloorInterval(confidence, IntervalSide.Both);

    /// <summary>Interval for the curve at a moment, in the unit of the readings, of the profile likelihood.</summary>
    /// <param name="at">The moment, not before <see cref="Origin"/>.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment is before the origin.</exception>
    public Interval IntervalAt(DateTimeOffset at, double confidence = 0.9) =>
        fall.ValueInterval(HoursTo(at), confidence, IntervalSide.Both);

    /// <summary>Band at a moment for the curve itself or for one new reading, in the unit of the readings.</summary>
    /// <remarks>
    /// By the delta method (<see cref="ExponentialDecay.BandAt"/>); with constant noise it may reach below 0 and is not clipped. With
    /// readings below a limit the band of the curve is of the profile likelihood and the scatter adds to it as errors add.
    /// </remarks>
    /// <param name="at">The moment, not before <see cref="Origin"/>.</param>
    /// <param name="of">The curve, or one new reading: the band to judge the next sample by.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The band.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment is before the origin.</exception>
    public Interval BandAt(DateTimeOffset at, BandKind of, double confidence = 0.9) =>
        fall.Band(Guard.NotNegative(HoursTo(at), "h from the origin", nameof(at)), of, confidence, IntervalSide.Both);

    /// <summary>When the curve reaches a target.</summary>
    /// <remarks>
    /// The ends are of the profile likelihood. Ends more than ten years after the origin are given as ten years. Not determined: there are
    /// too few readings, <see cref="Status"/> says which, or they contradict one exponential, <see cref="Course"/> says how. Never: every
    /// curve that agrees with the readings levels off above the target, at about <see cref="Floor"/>, also where a second, slower fall is
    /// allowed beside the first; or the readings rise.
    /// </remarks>
    /// <param name="target">The value to reach, in the unit of the readings.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>One of the cases of <see cref="Arrival{T}"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target is not finite, or the level outside its range.</exception>
    public Arrival<DateTimeOffset> TimeTo(double target, double confidence = 0.9)
    {
        Guard.Finite(target, "");
        var interval = fall.TimeTo(target, confidence, IntervalSide.Both);
        if (!HasCurve)
        {
            return new Arrival<DateTimeOffset>.NotDetermined(confidence);
        }

        if (Status == ExponentialDecayStatus.Rising && Start <= target && Floor > target)
        {
            // A run that began below the target and rises past it is not done.
            return new Arrival<DateTimeOffset>.Never(confidence, CoverageInDoubt);
        }

        if (Start <= target || (interval.HasEstimate && interval.Estimate <= HoursTo(LastReadingAt)))
        {
            return new Arrival<DateTimeOffset>.Already(
                Start <= target ? Origin : Moment(interval.Estimate),
                IsShownBelow(target, confidence),
                confidence,
                CoverageInDoubt
            );
        }

        if (Course.IsContradicted && !(interval.Outcome == TimeToValueOutcome.NeverReached && Start < Floor))
        {
            return new Arrival<DateTimeOffset>.NotDetermined(confidence);
        }

        return interval.Outcome == TimeToValueOutcome.NeverReached
            ? LevelsOffAbove(target, 0.5 + confidence / 2)
                ? new Arrival<DateTimeOffset>.Never(confidence, CoverageInDoubt)
                : new Arrival<DateTimeOffset>.NotBefore(LastReadingAt, confidence, CoverageInDoubt)
            : interval.HasEstimate && interval.HasUpper
                ? new Arrival<DateTimeOffset>.Expected(
                    Moment(interval.Lower),
                    Moment(interval.Estimate),
                    Moment(interval.Upper),
                    confidence,
                    CoverageInDoubt
                )
                : new Arrival<DateTimeOffset>.NotBefore(Moment(interval.Lower), confidence, CoverageInDoubt);
    }

    /// <summary>
    /// The early end alone, at a one-sided level: the origin where the target is passed, the last reading where nothing is known of later; null
    /// where it is never reached.
    /// </summary>
    internal DateTimeOffset? Earliest(double target, double oneSided)
    {
        var interval = fall.TimeTo(target, oneSided, IntervalSide.Lower);
        return !HasCurve ? Origin
            : Status == ExponentialDecayStatus.Rising && Start <= target && Floor > target ? null
            : Start <= target || (interval.HasEstimate && interval.Estimate <= HoursTo(LastReadingAt)) ? Origin
            : interval.Outcome == TimeToValueOutcome.NeverReached && LevelsOffAbove(target, oneSided) ? null
            : interval.Outcome == TimeToValueOutcome.NeverReached || Course.IsContradicted ? LastReadingAt
            : Moment(interval.Lower);
    }

    /// <summary>Whether the readings show, at a one-sided level, that the run levels off above a target: that a second fall is hidden in the level is excluded too.</summary>
    internal bool LevelsOffAbove(double target, double oneSided) =>
        Start < Floor ? Start > target : fall.LowestLevel(oneSided) > target;

    /// <summary>The late end of the time to a target, also where the best curve has passed it; null where that is not demonstrated.</summary>
    internal DateTimeOffset? Latest(double target, double confidence)
    {
        var interval = fall.TimeTo(target, confidence, IntervalSide.Both);
        return interval.HasUpper ? Moment(interval.Upper) : null;
    }

    /// <summary>Whether the upper end of the curve at the last reading is at the target or below; one-sided, at the uncertainty of one end.</summary>
    private bool IsShownBelow(double target, double confidence)
    {
        var (hour, oneSided) = (Math.Max(0, HoursTo(LastReadingAt)), 0.5 + confidence / 2);

        // Where the course is another one, the scatter about the curve counts what it is wrong by.
        var now = Course.IsContradicted
            ? fall.Band(hour, BandKind.NewReading, oneSided, IntervalSide.Upper)
            : fall.ValueInterval(hour, oneSided, IntervalSide.Upper);
        return now.Upper <= target;
    }

    private DateTimeOffset Moment(double hoursFromOrigin) => Origin.AddHours(Math.Min(hoursFromOrigin, LongestHours));
}
