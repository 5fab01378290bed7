using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>What a series does, which method says so and why, and which readings it rests on.</summary>
public sealed partial class TrendAssessment
{
    private readonly TrendLine line;

    /// <summary>A sudden change of level within a series: a treatment, a top-up, an oil change, another method.</summary>
    /// <param name="LastBefore">Index, in the caller's order, of the last reading before it.</param>
    /// <param name="FirstAfter">Index, in the caller's order, of the first reading after it.</param>
    /// <param name="Step">Level after less level before, in the unit of the values; on the logarithmic scale the ln of their ratio.</param>
    /// <param name="PValue">Upper bound of the probability of so clear a step by chance alone.</param>
    [StructLayout(LayoutKind.Auto)]
    public readonly record struct LevelChange(int LastBefore, int FirstAfter, double Step, double PValue)
    {
        /// <inheritdoc/>
        public override string ToString() =>
            $"step of {PlainText.Number(Step)} between readings {LastBefore} and {FirstAfter}, p = {PlainText.Number(PValue)}";
    }

    internal TrendAssessment(
        TrendSeries series,
        TrendReadings readings,
        TrendVerdict verdict,
        TrendLine line,
        IReadOnlyList<TrendReason> reasons,
        double confidence
    )
    {
        this.line = line;
        Verdict = verdict;
        Reasons = reasons;
        Confidence = confidence;
        Scale = series.Scale;
        Used = readings.Used;
        Outliers = readings.Outliers;
        Changes = readings.Changes;
    }

    /// <summary>What the series does.</summary>
    public TrendVerdict Verdict { get; }

    /// <summary>Which method spoke.</summary>
    internal TrendMethod Method => line.Method;

    /// <summary>Why it did, and what was allowed for.</summary>
    public IReadOnlyList<TrendReason> Reasons { get; }

    /// <summary>The scale of slope and scatter.</summary>
    public NaturalScale Scale { get; }

    /// <summary>Slope, per unit of time: in the unit of the values, or on the logarithmic scale of ln y (0.01 is 1 % a unit of time); 0 where there is none.</summary>
    public double Slope => line.Slope;

    /// <summary>Interval of the slope at the confidence asked for, with correlation allowed for; ends are missing where readings do not bound it.</summary>
    public Interval SlopeInterval => line.SlopeInterval;

    /// <summary>Level of the interval.</summary>
    public double Confidence { get; }

    /// <summary>Two-sided probability of a slope as clear by chance alone; 1 where nothing was judged.</summary>
    public double PValue => line.PValue;

    /// <summary>Standard deviation of the readings used about the line, on the scale; 0 where it is not known, as with censored readings.</summary>
    public double Scatter => line.Scatter;

    /// <summary>Lag-1 correlation of the residuals that was allowed for, 0 or more.</summary>
    public double Correlation => line.Correlation;

    /// <summary>Number of independent readings that would tell as much: n (1 − ρ)/(1 + ρ).</summary>
    public double EffectiveCount => SerialCorrelation.EffectiveCount(Used.Count, Correlation);

    /// <summary>The readings judged: indexes in the caller's order, by time.</summary>
    public IReadOnlyList<int> Used { get; }

    /// <summary>Wild readings since the last change: indexes in the caller's order, by time. They are flagged and left out of the fit, not removed.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>Sudden changes of level, by time. Readings before the last one are left out of the fit.</summary>
    public IReadOnlyList<LevelChange> Changes { get; }

    /// <summary>Whether the level of the line is known, so that <see cref="ValueAt"/> may be asked.</summary>
    public bool HasLine => line.Level.HasValue;

    /// <inheritdoc/>
    public override string ToString()
    {
        var found = Verdict switch
        {
            TrendVerdict.TooFewReadings => "too few readings",
            TrendVerdict.NoTrend => "no significant trend",
            TrendVerdict.Rising => "rising",
            _ => "falling",
        };
        if (Verdict == TrendVerdict.TooFewReadings)
        {
            return $"{found}: {Used.Count}";
        }

        // On the logarithmic scale 0.01 is about one per cent.
        var (factor, unit) = Scale == NaturalScale.Logarithmic ? (100, " %") : (1, "");
        var halfWidth = factor * (SlopeInterval.Upper - SlopeInterval.Lower) / 2;
        var method = Method == TrendMethod.StraightLine ? "straight line" : "median slope";
        return $"{found}, {PlainText.Number(factor * Slope, halfWidth)}{unit} per unit of time, "
            + $"p = {PlainText.Number(PValue)}, {Used.Count} readings, {method}";
    }

    /// <summary>The line at a time, in the unit of the values.</summary>
    /// <param name="time">Time. Beyond the readings used it is an assumption that the trend goes on.</param>
    /// <returns>The value.</returns>
    /// <exception cref="InvalidOperationException">The level of the line is not known.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or beyond 1e100.</exception>
    public double ValueAt(double time)
    {
        if (!line.Level.HasValue)
        {
            throw new InvalidOperationException(
                $"The level of the line is not known: {Verdict}, {Used.Count} readings."
            );
        }

        var distance = Guard.InRange(time, -1e100, 1e100, "") - line.At;
        return Scales.Back(line.Level.Value + line.Slope * distance, Scale);
    }
}
