using OilCondition.Charts;
using OilCondition.Cleanup;
using OilCondition.Interactive.Views;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Water;

namespace OilCondition.Interactive;

/// <summary>Results as HTML: a small table with units and intervals, and a picture.</summary>
/// <remarks>
/// A notebook shows results this way by itself once it refers to this package. Figures, sentences and pictures are those of the results and of
/// OilCondition.Charts; nothing is judged anew. The same result gives the same bytes, whatever culture and time zone the machine has. The HTML is
/// well-formed XML, asks for nothing outside itself and has no script; names of machines and oils are escaped.
/// </remarks>
/// <example>
/// <code>
/// File.WriteAllText("bearing.html", ResultHtml.Of(assessment));
/// </code>
/// </example>
public static class ResultHtml
{
    /// <summary>Types that have a view; those derived from them have the same.</summary>
    public static IReadOnlyList<Type> Types { get; } =
    [
        typeof(Chart),
        typeof(CleanupCurve),
        typeof(ConditionAssessment),
        typeof(MeasurandState),
        typeof(RemainingLife),
        typeof(SaturationFit),
        typeof(SeriesTrend),
        typeof(TreatmentComparison),
        typeof(TreatmentDecision),
        typeof(TrendAssessment),
    ];

    /// <summary>The HTML of a result.</summary>
    /// <param name="result">The result, of one of <see cref="Types"/>.</param>
    /// <returns>One <c>div</c> element.</returns>
    /// <exception cref="ArgumentNullException">The result is null.</exception>
    /// <exception cref="ArgumentException">The result is of another type.</exception>
    public static string Of(object result) =>
        (
            Guard.NotNull(result) switch
            {
                Chart chart => new View().Picture(chart),
                CleanupCurve curve => CurveView.Of(curve),
                ConditionAssessment assessment => AssessmentView.Of(assessment),
                MeasurandState state => TrendView.Of(state),
                RemainingLife life => LifeView.Of(life),
                SaturationFit fit => SaturationView.Of(fit),
                SeriesTrend trend => TrendView.Of(trend),
                TreatmentComparison comparison => TreatmentView.Of(comparison),
                TreatmentDecision decision => TreatmentView.Of(decision),
                TrendAssessment figures => TrendView.Of(figures),
                _ => throw new ArgumentException(
                    $"result is of type {result.GetType().Name}; allowed: {string.Join(", ", Types.Select(type => type.Name))}.",
                    nameof(result)
                ),
            }
        ).Html();
}
