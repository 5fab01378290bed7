using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>How sure one look must be, so that a run that is looked at after each reading is not judged too early by one of its many looks.</summary>
/// <remarks>
/// A mean of n readings crosses z s/√n, z² = (1 + m/n) (ln((n + m)/m) + 2 ln(1/α)), at any n whatever with a chance of α at most, both sides together
/// (Robbins 1970, normal mixture; from memory, compared with simulated walks). α is half of what the confidence leaves, m = 4 readings, where the bound
/// is narrowest for runs of some dozens of readings (ours): z is 3.0 to 3.4 for 10 to 1000 readings. Readings that follow one another widen an interval by
/// √((1 + r)/(1 − r)), r: lag 1 of the residuals.
/// </remarks>
internal static class SequentialLevel
{
    private const double Mixture = 4;

    /// <summary>Up to here Student's quantile is quick and sure for any degrees of freedom; 3.7 standard errors.</summary>
    private const double Highest = 0.9999;

    /// <summary>One-sided level of a single look.</summary>
    /// <param name="confidence">Two-sided confidence of the whole run.</param>
    /// <param name="count">Readings so far.</param>
    public static double OneSided(double confidence, int count) =>
        Math.Min(Highest, NormalTail.Probability(Z(confidence, count)));

    /// <summary>Standard errors that a look must clear.</summary>
    public static double Z(double confidence, double count)
    {
        var n = Math.Max(1, count);
        return Math.Sqrt((1 + Mixture / n) * (Math.Log((n + Mixture) / Mixture) + 2 * Math.Log(2 / (1 - confidence))));
    }

    /// <summary>The least at which a curve levels off; null where the readings do not bound it.</summary>
    public static double? LowestFloor(CleanupCurve curve, double confidence) =>
        curve.HasCurve
        && curve.Fall.FloorInterval(OneSided(confidence, curve.Count), IntervalSide.Lower).Lower is { } end
            ? curve.Floor - Widening(curve) * (curve.Floor - end)
            : null;

    /// <summary>Whether a curve is at a target or below at its last reading for certain, however often it is looked at.</summary>
    public static bool ShowsBelow(CleanupCurve curve, double target, double confidence)
    {
        if (!curve.HasCurve)
        {
            return false;
        }

        var hour = Math.Max(0, (curve.LastReadingAt - curve.Origin).TotalHours);
        var now = curve.Fall.ValueAt(hour);

        // Where the course is another one, the scatter about the curve counts what it is wrong by.
        var level = OneSided(confidence, curve.Count);
        var end = curve.Course.IsContradicted
            ? curve.Fall.Band(hour, BandKind.NewReading, level, IntervalSide.Upper).Upper
            : curve.Fall.ValueInterval(hour, level, IntervalSide.Upper).Upper;
        return now + Widening(curve) * (end - now) <= target;
    }

    /// <summary>How much less a reading tells where residuals follow one another.</summary>
    private static double Widening(CleanupCurve curve)
    {
        var r = curve.CoverageInDoubt ? Math.Max(0, Math.Min(0.9, curve.ResidualAutocorrelation)) : 0;
        return Math.Sqrt((1 + r) / (1 - r));
    }
}
