using OilCondition.Limits;
using OilCondition.Prognosis;

namespace OilCondition;

/// <summary>Where one measurand stands against one limit, whether it moves, and how long it may take to get there.</summary>
public sealed class MeasurandState
{
    internal MeasurandState(
        LimitEvaluation evaluation,
        SeriesPoint? latest,
        TopUpCorrection topUps,
        SeriesTrend trend,
        IReadOnlyList<RemainingLife> life
    )
    {
        Evaluation = evaluation;
        Latest = latest;
        TopUps = topUps;
        Trend = trend;
        Life = life;
    }

    /// <summary>The readings of the charge held against the limit.</summary>
    public LimitEvaluation Evaluation { get; }

    /// <summary>The measurand.</summary>
    public Measurand Measurand => Evaluation.Limit.Measurand;

    /// <summary>The latest reading of this charge; null when there is none.</summary>
    public SeriesPoint? Latest { get; }

    /// <summary>The laboratory readings since the oil change or the last treatment, with top-ups reckoned out where that can be done.</summary>
    public TopUpCorrection TopUps { get; }

    /// <summary>Whether they move or only scatter, and which of them were set aside.</summary>
    public SeriesTrend Trend { get; }

    /// <summary>
    /// Remaining life to the alarm figure (or the alert figure where there is no alarm) on each limited side, from the readings that the
    /// trend judged; empty while a treatment of this measurand is under way or when the limit is no fixed figure.
    /// </summary>
    public IReadOnlyList<RemainingLife> Life { get; }
}
