using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.ControlCharts;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>A control chart of a series with its limits and signals.</summary>
/// <remarks>Readings that are bounds (&lt;, &gt;) have no place on a control chart and are left out; the description says how many.</remarks>
public static class ControlChart
{
    /// <summary>Single readings.</summary>
    /// <param name="chart">Centre and limits, from a sound period.</param>
    /// <param name="series">The readings.</param>
    /// <param name="title">What was read, such as the machine; null for the measurand alone.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says 'no readings' where there are none.</returns>
    public static Chart Of(
        IndividualsChart chart,
        MeasurandSeries series,
        string? title = null,
        ChartOptions? options = null
    )
    {
        Guard.NotNull(chart);
        return Draw(series, title, options, picture => picture.Individuals(chart));
    }

    /// <summary>Exponentially weighted moving average.</summary>
    /// <param name="chart">Target, scale and weight.</param>
    /// <param name="series">The readings.</param>
    /// <param name="title">What was read, such as the machine; null for the measurand alone.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says 'no readings' where there are none.</returns>
    public static Chart Of(EwmaChart chart, MeasurandSeries series, string? title = null, ChartOptions? options = null)
    {
        Guard.NotNull(chart);
        return Draw(series, title, options, picture => picture.Average(chart));
    }

    /// <summary>Cumulative sums, those of a fall drawn downwards.</summary>
    /// <param name="chart">Target, allowance and decision interval.</param>
    /// <param name="series">The readings.</param>
    /// <param name="title">What was read, such as the machine; null for the measurand alone.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says 'no readings' where there are none.</returns>
    public static Chart Of(CusumChart chart, MeasurandSeries series, string? title = null, ChartOptions? options = null)
    {
        Guard.NotNull(chart);
        return Draw(series, title, options, picture => picture.Sums(chart));
    }

    private static Chart Draw(
        MeasurandSeries series,
        string? title,
        ChartOptions? options,
        Func<ControlPicture, Scene> draw
    )
    {
        Guard.NotNull(series);
        options ??= ChartOptions.Default;
        var points = series.Points;
        var page = Page.Of(options, points.Count > 0 ? points[points.Count - 1].At : series.Origin);
        return new Chart(draw(new ControlPicture(page, series, title)), options);
    }
}
