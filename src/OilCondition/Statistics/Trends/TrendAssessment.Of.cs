namespace OilCondition.Statistics;

/// <summary>Says of a short, irregular, imperfect series whether it moves, and which method says so.</summary>
/// <remarks>
/// In this order: (1) readings by time, on the scale asked for, less a cycle of the period asked for where an F test at 1 % finds one; (2) sudden steps on a line
/// (<see cref="Changes"/>): one to the better starts the series anew, one to the worse is said and leaves nothing out; (3) generalised ESD on residuals of
/// a Theil-Sen line, up to one reading in six: wild readings are flagged and left out, but never the latest ones on the worse side; (4) Theil-Sen and
/// Mann-Kendall for censored readings, else least squares averaged over how far each reading resembles the one before and
/// over whether the rise comes evenly, late or early. How often it sees a trend in pure scatter is measured in docs/quality.md.
/// </remarks>
/// <example>
/// <code>
/// double[] months = [0, 3, 6, 9, 12, 15, 18, 21];
/// double[] acid = [0.08, 0.09, 0.09, 0.10, 0.10, 0.12, 0.11, 0.13];   // mg KOH/g
/// var trend = TrendAssessment.Of(months, acid);                     // Rising, by StraightLine
/// </code>
/// </example>
public sealed partial class TrendAssessment
{
    /// <summary>Judges a series.</summary>
    /// <param name="times">When readings were taken; n values in any order, at most 5000.</param>
    /// <param name="values">What was read; n values. For a censored reading the figure after the sign. On the logarithmic scale 0 or more: a 0 is taken as below the smallest reading above 0.</param>
    /// <param name="censoring">Whether a reading is only known to lie below or above its value; empty if none is.</param>
    /// <param name="options">How to judge; null for the defaults.</param>
    /// <returns>Verdict, method, reasons, slope, and the readings it rests on.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or there are more than 5000 readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100, or below 0 on the logarithmic scale.</exception>
    public static TrendAssessment Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring = default,
        TrendOptions? options = null
    )
    {
        using var designs = new RiseDesigns();
        return Of(times.ToArray(), values.ToArray(), censoring.ToArray(), options ?? TrendOptions.Default, designs);
    }

    /// <summary>The same of arrays that may be changed, with designs to be shared with other series of the same dates.</summary>
    internal static TrendAssessment Of(
        double[] times,
        double[] values,
        Censoring[] censoring,
        TrendOptions options,
        RiseDesigns designs
    )
    {
        var read = TrendSeries.Of(times, values, censoring, options.Scale);
        var cycle = read.Censoring.Length > 0 ? null : SeasonalCycle.Find(read.Times, read.Values, options.Cycle);
        var series = read.Without(cycle);
        var screened = TrendScreen.Of(series, options);
        var reasons = new List<TrendReason>();
        var chosen = TrendChoice.Line(series, screened.Kept, cycle, options, reasons, designs);
        AddReason(reasons, TrendReason.Cycle, cycle is not null);
        AddReason(reasons, TrendReason.OutliersLeftOut, screened.Outliers.Length > 0);
        AddReason(reasons, TrendReason.MoreOutliersPossible, screened.MoreOutliersPossible);
        AddReason(reasons, TrendReason.SinceChange, Array.Exists(screened.Changes, change => change.IsToBetter));
        AddReason(reasons, TrendReason.SuddenlyWorse, Array.Exists(screened.Changes, change => !change.IsToBetter));
        AddReason(reasons, TrendReason.ZerosTakenAsBelow, series.HasZeros);
        var verdict = VerdictOn(series, screened.Kept, chosen, options);
        AddReason(
            reasons,
            TrendReason.BelowSmallestChange,
            verdict == TrendVerdict.NoTrend && IsClear(chosen, options)
        );
        return new TrendAssessment(series, screened, verdict, chosen, cycle, reasons.ToArray(), options.Confidence);
    }

    private static TrendVerdict VerdictOn(TrendSeries series, int[] kept, TrendLine line, TrendOptions options)
    {
        if (line.Method == TrendMethod.None)
        {
            return TrendVerdict.TooFewReadings;
        }

        // A median slope may be 0 where ties are many: then there is no change that matters, however clear the order.
        var span = series.Times[kept[kept.Length - 1]] - series.Times[kept[0]];
        return !IsClear(line, options) || line.Slope == 0 || Math.Abs(line.Slope) * span < options.SmallestChange
                ? TrendVerdict.NoTrend
            : line.Slope > 0 ? TrendVerdict.Rising
            : TrendVerdict.Falling;
    }

    private static bool IsClear(TrendLine line, TrendOptions options) => line.PValue < 1 - options.Confidence;

    private static void AddReason(List<TrendReason> reasons, TrendReason reason, bool holds)
    {
        if (holds)
        {
            reasons.Add(reason);
        }
    }
}
