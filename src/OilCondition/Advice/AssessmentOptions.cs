using OilCondition.Prognosis;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>How an assessment is made.</summary>
public sealed class AssessmentOptions
{
    private static readonly SamplingPlan UsualSampling = new(
        Ratio.FromPercent(5),
        Elapsed.FromDays(14),
        Elapsed.FromDays(180)
    );

    /// <summary>Options.</summary>
    /// <param name="asOf">Now: later records are not looked at; in the years 1900 to 2199.</param>
    /// <param name="planningHorizon">How far ahead maintenance is planned; a shorter remaining life is an alert. Default 180 days.</param>
    /// <param name="confidence">Confidence of intervals, above 0 and below 1.</param>
    /// <param name="trendSignificance">
    /// A trend counts when one as clear arises by scatter alone with less than this probability, 0.0001 to 0.5. The default of 0.4 % is for a machine
    /// with ten measurands that is looked at every month: 5 % would find some trend in each of them every year.
    /// </param>
    /// <param name="overOilHours">
    /// Whether trends run over oil hours and not over the calendar; machines whose samples have no oil hours fall back to the calendar.
    /// </param>
    /// <param name="sampling">Accepted risk and intervals of sampling; 5 %, 14 and 180 days where left out.</param>
    /// <param name="fleet">What other machines teach about remaining life, for any of the measurands; none where left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public AssessmentOptions(
        DateTimeOffset asOf,
        TimeSpan? planningHorizon = null,
        double confidence = 0.9,
        double trendSignificance = 0.004,
        bool overOilHours = false,
        SamplingPlan? sampling = null,
        IReadOnlyList<FleetKnowledge>? fleet = null
    )
    {
        AsOf = Guard.Moment(asOf);
        PlanningHorizon = planningHorizon ?? Elapsed.FromDays(180);
        Guard.InRange(PlanningHorizon.TotalDays, 0, 36_525, "days", nameof(planningHorizon));
        Confidence = Guard.OpenUnitInterval(confidence);
        TrendSignificance = Guard.InRange(trendSignificance, 0.0001, 0.5, "");
        OverOilHours = overOilHours;
        Sampling = sampling ?? UsualSampling;
        Fleet = fleet ?? [];
    }

    /// <summary>Now.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>How far ahead maintenance is planned.</summary>
    public TimeSpan PlanningHorizon { get; }

    /// <summary>Confidence of intervals.</summary>
    public double Confidence { get; }

    /// <summary>Whether trends run over oil hours and not over the calendar.</summary>
    public bool OverOilHours { get; }

    /// <summary>Accepted risk and intervals of sampling.</summary>
    public SamplingPlan Sampling { get; }

    /// <summary>What other machines teach about remaining life.</summary>
    public IReadOnlyList<FleetKnowledge> Fleet { get; }

    /// <summary>Largest probability of a slope by scatter alone at which a trend counts.</summary>
    public double TrendSignificance { get; }
}
