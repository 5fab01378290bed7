using OilCondition.Guards;
using OilCondition.Sampling;
using UnitsNet;

namespace OilCondition.Advice;

/// <summary>How an assessment is made.</summary>
public sealed class AssessmentOptions
{
    /// <summary>Options.</summary>
    /// <param name="asOf">Now: later records are not looked at.</param>
    /// <param name="planningHorizon">How far ahead maintenance is planned; a shorter remaining life is an alert. Default 180 days.</param>
    /// <param name="confidence">Confidence of intervals, above 0 and below 1.</param>
    /// <param name="trendSignificance">
    /// A trend counts when a slope as steep arises by scatter alone with at most this probability, above 0 and below 1.
    /// </param>
    /// <param name="axis">
    /// Whether trends run over the calendar or over oil hours; machines whose samples have no oil hours fall back to the calendar.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public AssessmentOptions(
        DateTimeOffset asOf,
        Duration? planningHorizon = null,
        double confidence = 0.9,
        double trendSignificance = 0.01,
        TimeAxis axis = TimeAxis.Calendar
    )
    {
        AsOf = asOf;
        PlanningHorizon = planningHorizon ?? Duration.FromDays(180);
        Guard.InRange(PlanningHorizon.Days, 0, 36_525, "days", nameof(planningHorizon));
        Confidence = Guard.OpenUnitInterval(confidence, nameof(confidence));
        TrendSignificance = Guard.OpenUnitInterval(trendSignificance, nameof(trendSignificance));
        Axis = axis;
    }

    /// <summary>Now.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>How far ahead maintenance is planned.</summary>
    public Duration PlanningHorizon { get; }

    /// <summary>Confidence of intervals.</summary>
    public double Confidence { get; }

    /// <summary>Whether trends run over the calendar or over oil hours.</summary>
    public TimeAxis Axis { get; }

    /// <summary>Largest probability of a slope by scatter alone at which a trend counts.</summary>
    public double TrendSignificance { get; }
}
