using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Whether a series has a trend, and what is left of it once wild readings and earlier levels are set aside.</summary>
/// <remarks>
/// <see cref="TrendAssessment"/> on the axis of the series (days), on the measurand's natural scale, with readings that are bounds kept as
/// bounds. See there for the order of the steps and for how often it sees a trend in pure scatter.
/// </remarks>
public sealed class SeriesTrend
{
    private const double NextToNothing = 1e-30;
    private const double DaysOfYear = 365.25;

    private SeriesTrend(MeasurandSeries series, TrendAssessment assessment)
    {
        Series = series;
        Assessment = assessment;
        Judged = assessment.Used.Count == series.Points.Count ? series : WithoutSetAside(series, assessment);
    }

    private static MeasurandSeries WithoutSetAside(MeasurandSeries series, TrendAssessment assessment)
    {
        var judged = new HashSet<int>(assessment.Used);
        var wild = new HashSet<int>(assessment.Outliers);
        var setAside = Enumerable
            .Range(0, series.Points.Count)
            .Where(i => !judged.Contains(i))
            .ToDictionary(i => i, i => wild.Contains(i) ? LeftOutReason.Wild : LeftOutReason.BeforeChange);
        return series.Without(setAside);
    }

    /// <summary>The series that was given.</summary>
    public MeasurandSeries Series { get; }

    /// <summary>Verdict, method, reasons; slope per day. Its indexes are those of the series' points.</summary>
    public TrendAssessment Assessment { get; }

    /// <summary>The readings that were judged, as a series; what was set aside stands beside it with its reason.</summary>
    public MeasurandSeries Judged { get; }

    /// <summary>Judges a series.</summary>
    /// <param name="series">The readings; at most 5000.</param>
    /// <param name="options">How to judge; null for the measurand's scale and the defaults of <see cref="TrendOptions"/>.</param>
    /// <returns>The trend.</returns>
    /// <exception cref="ArgumentException">There are more than 5000 readings.</exception>
    public static SeriesTrend Of(MeasurandSeries series, TrendOptions? options = null)
    {
        using var designs = new RiseDesigns();
        return Of(Guard.NotNull(series), options ?? OptionsFor(series), designs);
    }

    /// <summary>The same with designs to be shared with other series of the same dates.</summary>
    internal static SeriesTrend Of(MeasurandSeries series, TrendOptions options, RiseDesigns designs)
    {
        var count = series.Points.Count;
        var (days, values) = (new double[count], new double[count]);
        Censoring[] censoring = [];
        for (var i = 0; i < count; i++)
        {
            var reading = series.ReadingOf(i);
            (days[i], values[i]) = (series.DayOf(i), FigureOf(reading, options.Scale));
            if (reading.IsCensored)
            {
                censoring = censoring.Length > 0 ? censoring : new Censoring[count];
                censoring[i] = CensoringOf(reading);
            }
        }

        return new SeriesTrend(series, TrendAssessment.Of(days, values, censoring, options, designs));
    }

    /// <summary>What is known of a measurand before its readings: scale, worse side, the error of its test method, and the year as a cycle.</summary>
    internal static TrendOptions OptionsFor(MeasurandSeries series, double confidence = 0.95)
    {
        var measurand = series.Measurand;
        return new TrendOptions(
            measurand.Scale,
            confidence,
            worse: measurand.Worse switch
            {
                LimitSide.Upper => TrendVerdict.Rising,
                LimitSide.Lower => TrendVerdict.Falling,
                _ => null,
            },
            cycle: series.IsOverOilHours ? null : DaysOfYear,
            readingError: series.ReadingError
        );
    }

    /// <summary>'More than 0' tells nothing on a logarithmic scale, where 0 has no place: it stays a bound, below all readings.</summary>
    private static double FigureOf(Reading reading, NaturalScale scale) =>
        scale == NaturalScale.Logarithmic && reading.Qualifier == Qualifier.GreaterThan
            ? Math.Max(reading.Value, NextToNothing)
            : reading.Value;

    private static Censoring CensoringOf(Reading reading) =>
        reading.Qualifier switch
        {
            Qualifier.LessThan => Censoring.Below,
            Qualifier.GreaterThan => Censoring.Above,
            _ => Censoring.None,
        };

    /// <summary>Verdict and slope.</summary>
    /// <returns>For example <c>acid number: rising, 0.02 mgKOH/g per 30 days (13 readings)</c>.</returns>
    public override string ToString() =>
        $"{Series.Measurand.Name}: "
        + Assessment.Verdict switch
        {
            TrendVerdict.Rising or TrendVerdict.Falling =>
                $"{PlainText.Spaced(Assessment.Verdict)}, {Pace()} ({Assessment.Used.Count} readings)",
            TrendVerdict.NoTrend => $"no significant trend ({Assessment.Used.Count} readings)",
            _ => $"too few readings ({Judged.Points.Count})",
        };

    private string Pace() =>
        Assessment.Scale == NaturalScale.Logarithmic
            ? $"factor {PlainText.Number(Math.Exp(30 * Assessment.Slope))} per 30 days"
            : $"{PlainText.Number(30 * Assessment.Slope)} {Series.Measurand.Unit}".TrimEnd() + " per 30 days";
}
