using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Cleanup;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>A treatment under way: readings by kind, the fitted fall with its band, the target, and when it is completed.</summary>
/// <remarks>Curve and completion are those of the monitor; nothing is fitted anew.</remarks>
public static class CleanupChart
{
    /// <summary>The chart of the treatment that is under way on an assessed machine.</summary>
    /// <param name="assessment">The assessment.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says so where no treatment is under way.</returns>
    public static Chart Of(ConditionAssessment assessment, ChartOptions? options = null)
    {
        Guard.NotNull(assessment);
        options ??= ChartOptions.Default;
        var page = Page.Of(options, assessment.Options.AsOf);
        var machine = Page.Machine(assessment.History.Machine);
        if (assessment.Cleanup is not { } cleanup)
        {
            return new Chart(
                Scene.Nothing(page.Texts.Say("cleanup.title", ("machine", machine)), page.Texts["cleanup.none"]),
                options
            );
        }

        var what = page.Sentences.Of(cleanup.Run.Kind);
        return new Chart(
            new CleanupPicture(
                page,
                page.Texts.Say("title.of", ("whose", machine), ("what", what)),
                cleanup.Status,
                CleanupReading.Of(assessment.History, cleanup.Run, assessment.Options.AsOf)
            ).Scene(),
            options
        );
    }

    /// <summary>The chart of a run that is followed by a monitor.</summary>
    /// <param name="title">What the run is of, such as the machine.</param>
    /// <param name="status">Where the run stands.</param>
    /// <param name="readings">The readings that the monitor was given.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says 'no readings' where there are none.</returns>
    /// <exception cref="ArgumentException">The title is blank.</exception>
    public static Chart Of(
        string title,
        CleanupStatus status,
        IEnumerable<CleanupReading> readings,
        ChartOptions? options = null
    )
    {
        Guard.NotBlank(title);
        Guard.NotNull(status);
        options ??= ChartOptions.Default;
        return new Chart(
            new CleanupPicture(Page.Of(options, status.AsOf), title, status, [.. Guard.NotNull(readings)]).Scene(),
            options
        );
    }

    /// <summary>The chart of a curve with the readings that it was fitted to, in their unit, which the curve does not know.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="options">Size, words; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <param name="confidence">Two-sided confidence level of the band, above 0 and below 1.</param>
    /// <returns>The chart; one that says 'no readings' where there is no curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside its range.</exception>
    public static Chart Of(CleanupCurve curve, ChartOptions? options = null, double confidence = 0.9)
    {
        Guard.NotNull(curve);
        Guard.OpenUnitInterval(confidence);
        options ??= ChartOptions.Default;
        return new Chart(new CurvePicture(Page.Of(options, curve.Origin), curve, confidence).Scene(), options);
    }
}
