using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>The readings of one measurand over time, with the trend, the limits and the forecast that the verdict rests on.</summary>
/// <remarks>
/// Nothing is judged anew: readings, trend and lives are those of <see cref="MeasurandState"/>. The trend line has the slope of the verdict and passes the
/// middle of the judged readings. The fan joins its end with the dates at which the limit is passed in one, five and nine cases of ten: it shows dates, not a
/// course.
/// </remarks>
public static class TrendChart
{
    /// <summary>The chart of one measurand of an assessment.</summary>
    /// <param name="assessment">The assessment.</param>
    /// <param name="measurand">The measurand; the assessment has a limit for it.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <param name="from">Where the chart begins; null for the first record of the machine.</param>
    /// <returns>The chart; one that says 'no readings' where there are none.</returns>
    /// <exception cref="ArgumentException">The assessment has no limit for the measurand.</exception>
    public static Chart Of(
        ConditionAssessment assessment,
        Measurand measurand,
        ChartOptions? options = null,
        DateTimeOffset? from = null
    )
    {
        Guard.NotNull(assessment);
        Guard.NotNull(measurand);
        var state =
            assessment.States.FirstOrDefault(one => one.Measurand.Equals(measurand))
            ?? throw new ArgumentException(
                $"measurand is {measurand.Id}; the assessment has limits for {string.Join(", ", assessment.States.Select(one => one.Measurand.Id))}.",
                nameof(measurand)
            );
        options ??= ChartOptions.Default;
        return new Chart(
            new TrendPicture(assessment, state, Page.Of(options, assessment.Options.AsOf), from).Scene(),
            options
        );
    }

    /// <summary>The chart of a trend alone, of no machine: its readings, its line, and the lines that the interval of its slope allows.</summary>
    /// <param name="trend">The trend.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says 'no readings' where there are none. A series without an even trend has no line.</returns>
    public static Chart Of(SeriesTrend trend, ChartOptions? options = null)
    {
        Guard.NotNull(trend);
        options ??= ChartOptions.Default;
        return new Chart(new SeriesPicture(Page.Of(options, trend.Series.Origin), trend).Scene(), options);
    }
}
