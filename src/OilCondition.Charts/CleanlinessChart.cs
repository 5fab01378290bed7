using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition.Charts;

/// <summary>Particles at the three sizes of ISO 4406 beside what is asked for, with the scale numbers.</summary>
public static class CleanlinessChart
{
    /// <summary>The chart of an assessed machine: its latest particle counts beside its alert figures, or alarm figures where it has no others.</summary>
    /// <param name="assessment">The assessment.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says 'no readings' where the oil was not counted.</returns>
    public static Chart Of(ConditionAssessment assessment, ChartOptions? options = null)
    {
        Guard.NotNull(assessment);
        options ??= ChartOptions.Default;
        var title = options.Texts.Say("cleanliness.title", ("machine", Page.Machine(assessment.History.Machine)));
        Measurand[] sizes = [Measurands.Particles4, Measurands.Particles6, Measurands.Particles14];
        return Draw(
            Page.Of(options, assessment.Options.AsOf),
            title,
            options,
            [.. sizes.Select(size => SizeColumn.Of(assessment, size))]
        );
    }

    /// <summary>The chart of counts.</summary>
    /// <param name="title">What was counted, such as the machine and the date.</param>
    /// <param name="counts">Particles per millilitre.</param>
    /// <param name="target">The code asked for; null for none.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentException">The title is blank.</exception>
    public static Chart Of(
        string title,
        ParticleLevels counts,
        CleanlinessCode? target = null,
        ChartOptions? options = null
    )
    {
        Guard.NotNull(counts);
        return Of(
            title,
            target,
            options,
            (counts.At4PerMillilitre, counts.At6PerMillilitre, counts.At14PerMillilitre),
            SizeColumn.Of
        );
    }

    /// <summary>The chart of a code, where the counts are not known: each size anywhere between the limits of its scale number.</summary>
    /// <param name="title">What was counted, such as the machine and the date.</param>
    /// <param name="code">The code.</param>
    /// <param name="target">The code asked for; null for none.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentException">The title is blank.</exception>
    public static Chart Of(
        string title,
        CleanlinessCode code,
        CleanlinessCode? target = null,
        ChartOptions? options = null
    )
    {
        Guard.NotNull(code);
        return Of(title, target, options, (code.At4, code.At6, code.At14), SizeColumn.Of);
    }

    private static Chart Of<T>(
        string title,
        CleanlinessCode? target,
        ChartOptions? options,
        (T At4, T At6, T At14) known,
        Func<T, ScaleNumber?, SizeColumn> column
    )
    {
        Guard.NotBlank(title);
        options ??= ChartOptions.Default;
        return Draw(
            new Page(options.Texts, TimeSpan.Zero),
            title,
            options,
            [column(known.At4, target?.At4), column(known.At6, target?.At6), column(known.At14, target?.At14)]
        );
    }

    private static Chart Draw(Page page, string title, ChartOptions options, IReadOnlyList<SizeColumn> columns) =>
        new(new CleanlinessPicture(page, title, columns).Scene(), options);
}
