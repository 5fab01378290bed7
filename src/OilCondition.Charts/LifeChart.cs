using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>A remaining life alone: its readings, its limit, and by when the limit is passed in one, five and nine cases of ten.</summary>
/// <remarks>
/// The chart of a measurand with all its limits and events is <see cref="TrendChart"/>. Nothing is judged anew.
/// </remarks>
public static class LifeChart
{
    /// <summary>The chart of a life.</summary>
    /// <param name="life">The life.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says 'no readings' where there are none.</returns>
    public static Chart Of(RemainingLife life, ChartOptions? options = null)
    {
        Guard.NotNull(life);
        options ??= ChartOptions.Default;
        var now = life is RemainingLife.Forecast { Crossing.AsOf: var asOf } ? asOf : life.Series.Origin;
        return new Chart(new LifePicture(Page.Of(options, now), life).Scene(), options);
    }
}
