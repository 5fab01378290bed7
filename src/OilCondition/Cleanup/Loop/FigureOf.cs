using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Makes figures of intervals.</summary>
internal static class FigureOf
{
    /// <summary>A figure by an increasing map of an interval.</summary>
    public static CleanupFigure<T> Interval<T>(
        CleanupCurve curve,
        in Interval interval,
        double? estimate,
        Func<double, T> map,
        CleanupFigureMethod method,
        bool isExtrapolated = false
    )
        where T : struct =>
        new(
            OutcomeOf(curve, interval.Outcome),
            method,
            estimate.HasValue ? map(estimate.Value) : null,
            interval.Lower is { } lower ? map(lower) : null,
            interval.Upper is { } upper ? map(upper) : null,
            interval.Confidence,
            interval.CoverageInDoubt,
            isExtrapolated
        );

    /// <summary>The same interval with each end that there is, and the missing ones, kept at or above zero.</summary>
    public static Interval NotNegative(in Interval interval) =>
        interval.Outcome is IntervalOutcome.TooFewReadings or IntervalOutcome.Known
            ? interval
            : Statistics.Interval.Between(
                Math.Max(0, interval.Lower ?? 0),
                interval.Upper is { } upper ? Math.Max(0, upper) : null,
                interval.Confidence,
                interval.Side,
                interval.CoverageInDoubt
            );

    private static CleanupFigureOutcome OutcomeOf(CleanupCurve curve, IntervalOutcome outcome) =>
        outcome switch
        {
            _ when curve.Status == ExponentialDecayStatus.TooFewAboveLimit => CleanupFigureOutcome.TooFewAboveLimit,
            IntervalOutcome.Bounded => CleanupFigureOutcome.Bounded,
            IntervalOutcome.NoUpperEnd => CleanupFigureOutcome.NoUpperEnd,
            IntervalOutcome.NoLowerEnd => CleanupFigureOutcome.NoLowerEnd,
            IntervalOutcome.TooFewReadings => CleanupFigureOutcome.TooFewReadings,
            IntervalOutcome.Known => CleanupFigureOutcome.Known,
            _ => CleanupFigureOutcome.NotDetermined,
        };
}
