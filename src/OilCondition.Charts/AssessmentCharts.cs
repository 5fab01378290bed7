using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>All charts that a report on one machine wants.</summary>
/// <example>
/// <code>
/// foreach (var chart in AssessmentCharts.Of(assessment))
/// {
///     page.Append("&lt;figure&gt;").Append(chart.ToSvg()).Append("&lt;/figure&gt;");
/// }
/// </code>
/// </example>
public static class AssessmentCharts
{
    /// <summary>The charts of an assessment: a cleanup under way, trends of measurands with readings (those in alarm first), saturation curve, cleanliness.</summary>
    /// <param name="assessment">The assessment.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The charts; none for a machine without a reading and a curve.</returns>
    public static IReadOnlyList<Chart> Of(ConditionAssessment assessment, ChartOptions? options = null)
    {
        Guard.NotNull(assessment);
        return
        [
            .. assessment.Cleanup is null ? [] : new[] { CleanupChart.Of(assessment, options) },
            .. assessment
                .States.Where(state => state.Latest is not null)
                .OrderByDescending(state => state.Worst.State)
                .Select(state => TrendChart.Of(assessment, state.Measurand, options)),
            .. assessment.History.Machine.Oil.SaturationCurve is null
                ? []
                : new[] { SaturationChart.Of(assessment, options) },
            .. assessment.Cleanliness is null ? [] : new[] { CleanlinessChart.Of(assessment, options) },
        ];
    }

    /// <summary>The charts that belong to a problem: the trends of the measurands that it was found in, for a work request.</summary>
    /// <param name="assessment">The assessment that the problem is of.</param>
    /// <param name="problem">The problem, such as that of an alert.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The charts, in the order of the limit set; none for a problem of no measurand, such as an overdue sample.</returns>
    public static IReadOnlyList<Chart> Of(ConditionAssessment assessment, Problem problem, ChartOptions? options = null)
    {
        Guard.NotNull(assessment);
        Guard.NotNull(problem);
        return
        [
            .. assessment
                .States.Where(state => state.Latest is not null && problem.Evidence.Contains(state.Measurand))
                .Select(state => TrendChart.Of(assessment, state.Measurand, options)),
        ];
    }
}
