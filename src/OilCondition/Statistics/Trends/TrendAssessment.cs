using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>What a series does, which method says so and why, and which readings it rests on.</summary>
public sealed partial class TrendAssessment
{
    private readonly TrendLine line;

    /// <summary>A sudden change of level within a series: a treatment, an oil change, another method; a leak, a failure.</summary>
    /// <param name="LastBefore">Index, in the caller's order, of the last reading before it.</param>
    /// <param name="FirstAfter">Index, in the caller's order, of the first reading after it.</param>
    /// <param name="Step">Level after less level before, in the unit of the values; on the logarithmic scale the ln of their ratio.</param>
    /// <param name="PValue">Upper bound of the probability of so clear a step by chance alone.</param>
    /// <param name="IsToBetter">Whether it goes to the better: the series is then judged from it on. One to the worse leaves nothing out.</param>
    [StructLayout(LayoutKind.Auto)]
    public readonly record struct LevelChange(
        int LastBefore,
        int FirstAfter,
        double Step,
        double PValue,
        bool IsToBetter
    )
    {
        /// <inheritdoc/>
        public override string ToString() =>
            $"step of {PlainText.Number(Step)} between readings {LastBefore} and {FirstAfter}, p = {PlainText.Number(PValue)}";
    }

    internal TrendAssessment(
        TrendSeries series,
        TrendScreen screened,
        TrendVerdict verdict,
        TrendLine line,
        SeasonalCycle? cycle,
        TrendReason[] reasons,
        double confidence
    )
    {
        this.line = line;
        Cycle = cycle;
        Verdict = verdict;
        Reasons = reasons;
        Confidence = confidence;
        Scale = series.Scale;
        Used = TrendSeries.Subset(series.Order, screened.Kept);
        Outliers = TrendSeries.Subset(series.Order, screened.Outliers);
        Changes = screened.Changes;
        LatestIsWild = screened.LatestIsWild;
    }

    /// <summary>What the series does.</summary>
    public TrendVerdict Verdict { get; }

    /// <summary>Which method spoke.</summary>
    internal TrendMethod Method => line.Method;

    /// <summary>Why it did, and what was allowed for.</summary>
    public IReadOnlyList<TrendReason> Reasons { get; }

    /// <summary>The scale of slope and scatter.</summary>
    public NaturalScale Scale { get; }

    /// <summary>The cycle that was found and taken out; null for none.</summary>
    internal SeasonalCycle? Cycle { get; }

    /// <summary>Mean slope over the time judged, per unit of time: in the unit of the values, or on the logarithmic scale of ln y (0.01 is 1 % a unit of time); 0 where there is none.</summary>
    public double Slope => line.Slope;

    /// <summary>Interval of the slope at the confidence asked for, with correlation allowed for; ends are missing where readings do not bound it.</summary>
    public Interval SlopeInterval => line.SlopeInterval;

    /// <summary>Level of the interval.</summary>
    public double Confidence { get; }

    /// <summary>Two-sided probability of a slope as clear by chance alone; 1 where nothing was judged.</summary>
    public double PValue => line.PValue;

    /// <summary>Standard deviation of the readings used about the line, on the scale; 0 where it is not known, as with censored readings.</summary>
    public double Scatter => line.Scatter;

    /// <summary>Correlation of readings a mean interval apart that was allowed for, 0 or more.</summary>
    public double Correlation => line.Correlation;

    /// <summary>The readings judged: indexes in the caller's order, by time.</summary>
    public IReadOnlyList<int> Used { get; }

    /// <summary>Wild readings since the last change: indexes in the caller's order, by time. They are flagged and left out of the fit, not removed.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>Sudden changes of level, by time. Readings before the last one to the better are left out of the fit.</summary>
    public IReadOnlyList<LevelChange> Changes { get; }

    /// <summary>Whether the latest readings lie so far on the worse side that they would be wild anywhere else; they stay in the fit.</summary>
    public bool LatestIsWild { get; }

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
        var more = Reasons.Contains(TrendReason.MoreOutliersPossible)
            ? ", as many outliers as are looked for: there may be more"
            : "";
        if (Verdict == TrendVerdict.TooFewReadings)
        {
            return $"{found}: {Used.Count}{more}";
        }

        // On the logarithmic scale 0.01 is about one per cent.
        var (factor, unit) = Scale == NaturalScale.Logarithmic ? (100, " %") : (1, "");
        var halfWidth = factor * (SlopeInterval.Upper - SlopeInterval.Lower) / 2;
        var method = Method == TrendMethod.StraightLine ? "straight line" : "median slope";
        return $"{found}, {PlainText.Number(factor * Slope, halfWidth)}{unit} per unit of time, "
            + $"p = {PlainText.Number(PValue)}, {Used.Count} readings, {method}{more}";
    }
}
