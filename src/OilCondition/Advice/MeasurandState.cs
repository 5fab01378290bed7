using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Sampling;

namespace OilCondition.Advice;

/// <summary>Where one measurand stands against one limit, and how long it may take to get there.</summary>
public sealed class MeasurandState
{
    internal MeasurandState(
        LimitEvaluation evaluation,
        SeriesPoint? latest,
        TopUpCorrection trend,
        IReadOnlyList<RemainingLife> life
    )
    {
        Trend = trend;
        Evaluation = evaluation;
        Latest = latest;
        Life = life;
    }

    /// <summary>The latest reading held against the limit.</summary>
    public LimitEvaluation Evaluation { get; }

    /// <summary>The measurand.</summary>
    public Measurand Measurand => Evaluation.Limit.Measurand;

    /// <summary>The latest reading of this charge; null when there is none.</summary>
    public SeriesPoint? Latest { get; }

    /// <summary>The laboratory readings since the oil change or the last treatment, with top-ups reckoned out where that can be done.</summary>
    public TopUpCorrection Trend { get; }

    /// <summary>
    /// Remaining life to the alarm figure (or the alert figure where there is no alarm) on each limited side;
    /// empty while a treatment of this measurand is under way or when the limit is not determined.
    /// </summary>
    public IReadOnlyList<RemainingLife> Life { get; }
}
