using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Planning;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>Where a mobile unit is when: a row for each machine with travel, waiting, connecting, treatment and the date by which it is due.</summary>
public static class ScheduleChart
{
    /// <summary>The chart of a schedule.</summary>
    /// <param name="title">What it is of, such as the unit.</param>
    /// <param name="schedule">The schedule.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says so where there are no visits.</returns>
    /// <exception cref="ArgumentException">The title is blank.</exception>
    public static Chart Of(string title, UnitSchedule schedule, ChartOptions? options = null)
    {
        Guard.NotBlank(title);
        Guard.NotNull(schedule);
        options ??= ChartOptions.Default;
        var page = Page.Of(options, schedule.Visits.Count > 0 ? schedule.Visits[0].Leave : default);
        return new Chart(new SchedulePicture(page, title, schedule).Scene(), options);
    }
}
