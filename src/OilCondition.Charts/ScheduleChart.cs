using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>Where a mobile unit is when: a row for each machine with travel, waiting, connecting, treatment and the date by which it is due.</summary>
public static class ScheduleChart
{
    /// <summary>The chart of a schedule.</summary>
    /// <param name="title">What it is of, such as the unit.</param>
    /// <param name="visits">The visits in their order, such as those of a schedule of <c>OilCondition.Planning</c>.</param>
    /// <param name="leftOut">Identifiers of machines that have no visit; null for none.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says so where there are no visits.</returns>
    /// <exception cref="ArgumentException">The title is blank.</exception>
    public static Chart Of(
        string title,
        IReadOnlyList<TreatmentDecision.IVisit> visits,
        IReadOnlyList<string>? leftOut = null,
        ChartOptions? options = null
    )
    {
        Guard.NotBlank(title);
        Guard.NotNull(visits);
        options ??= ChartOptions.Default;
        var page = Page.Of(options, visits.Count > 0 ? visits[0].Leave : default);
        return new Chart(new SchedulePicture(page, title, visits, leftOut ?? []).Scene(), options);
    }
}
