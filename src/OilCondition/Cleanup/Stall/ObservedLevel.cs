using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>What was observed of a run that levels off: its level and its rate, each with its uncertainty, and the content at which the curve begins.</summary>
/// <param name="Ppm">Level, mg/kg.</param>
/// <param name="UncertaintyPpm">Standard uncertainty of the readings' level.</param>
/// <param name="RatePerHour">Rate; null where the readings do not bound it.</param>
/// <param name="LogRateUncertainty">Standard uncertainty of the logarithm of the rate.</param>
/// <param name="StartPpm">Content at the begin of the curve.</param>
internal sealed record ObservedLevel(
    double Ppm,
    double UncertaintyPpm,
    double? RatePerHour,
    double LogRateUncertainty,
    double StartPpm
)
{
    public static ObservedLevel Of(CleanupCurve curve, double level, double confidence)
    {
        // Half of an interval over Student's quantile is about the standard error.
        var quantile = Math.Max(1, curve.Fall.Quantile(confidence, IntervalSide.Both));
        var floor = curve.FloorInterval(confidence);
        var flat = curve.ScatterAt(level) / Math.Sqrt(Math.Max(1, curve.Count));
        var uncertainty = floor is { Lower: { } low, Upper: { } high }
            ? Math.Max(flat, (high - low) / (2 * quantile))
            : flat;
        var rate = curve.RateIntervalPerHour(confidence);
        var isRateKnown =
            curve.Fall.HasRate && rate is { Outcome: IntervalOutcome.Bounded or IntervalOutcome.Known, Lower: > 0 };
        return new ObservedLevel(
            level,
            uncertainty,
            isRateKnown ? curve.RatePerHour : null,
            isRateKnown ? Math.Log(rate.Upper!.Value / rate.Lower!.Value) / (2 * quantile) : 0,
            Math.Max(level, curve.Start)
        );
    }
}
