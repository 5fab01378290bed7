using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>How a decision is made: how sure, what risk, how soon after an alert or alarm, with which margin, and by which rule.</summary>
/// <remarks>All defaults are ours. A plant states its own where it has them.</remarks>
/// <example><code>var options = new DecisionOptions(acceptedRisk: Ratio.FromPercent(2), confidence: Ratio.FromPercent(80));</code></example>
public sealed class DecisionOptions
{
    /// <summary>States how to decide. Name the arguments.</summary>
    /// <param name="confidence">Share of the cases in which a way must meet its target, above 0 and below 1; null for 0.9.</param>
    /// <param name="acceptedRisk">Chance of passing the alarm figure at which a treatment must be done, above 0 and below 1; null for 0.05.</param>
    /// <param name="alarmResponse">How long an alarm may stand, 0 to 10 years; null for 7 days.</param>
    /// <param name="alertResponse">How long free water at standstill, or an alert without a forecast, may stand, 0 to 10 years; null for 30 days.</param>
    /// <param name="margin">Share of a figure at which a target is set, above 0 to 1; null for 0.8. Particles are asked one number lower.</param>
    /// <param name="errors">Errors of what goes into a plan; null for the usual ones.</param>
    /// <param name="rule">The rule by which the options are ranked; null for <see cref="ChoiceRule.CheapestInTime"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure lies outside its range.</exception>
    public DecisionOptions(
        Ratio? confidence = null,
        Ratio? acceptedRisk = null,
        TimeSpan? alarmResponse = null,
        TimeSpan? alertResponse = null,
        Ratio? margin = null,
        InputErrors? errors = null,
        ChoiceRule? rule = null
    )
    {
        Confidence = confidence ?? Ratio.FromDecimalFractions(0.9);
        Guard.OpenUnitInterval(Confidence.DecimalFractions, nameof(confidence));
        AcceptedRisk = acceptedRisk ?? Ratio.FromDecimalFractions(0.05);
        Guard.OpenUnitInterval(AcceptedRisk.DecimalFractions, nameof(acceptedRisk));
        AlarmResponse = alarmResponse ?? Elapsed.FromDays(7);
        Guard.InRange(AlarmResponse.TotalDays, 0, 3653, "days", nameof(alarmResponse));
        AlertResponse = alertResponse ?? Elapsed.FromDays(30);
        Guard.InRange(AlertResponse.TotalDays, 0, 3653, "days", nameof(alertResponse));
        Margin = margin ?? Ratio.FromDecimalFractions(0.8);
        Guard.InRange(Margin.DecimalFractions, 1e-3, 1, "(ratio)", nameof(margin));
        Errors = errors ?? InputErrors.Usual;
        Rule = rule ?? ChoiceRule.CheapestInTime;
    }

    /// <summary>Share of the cases in which a way must meet its target.</summary>
    public Ratio Confidence { get; }

    /// <summary>Chance of passing the alarm figure at which a treatment must be done.</summary>
    public Ratio AcceptedRisk { get; }

    /// <summary>How long an alarm may stand.</summary>
    public TimeSpan AlarmResponse { get; }

    /// <summary>How long free water at standstill, or an alert without a forecast, may stand.</summary>
    public TimeSpan AlertResponse { get; }

    /// <summary>Share of a figure at which a target is set.</summary>
    public Ratio Margin { get; }

    /// <summary>Errors of what goes into a plan.</summary>
    public InputErrors Errors { get; }

    /// <summary>The rule by which the options are ranked.</summary>
    public ChoiceRule Rule { get; }

    /// <summary>The figures in one line.</summary>
    /// <returns>For example <c>met in 90 % of the cases, before a chance of 5 % of an alarm</c>.</returns>
    public override string ToString() =>
        $"met in {PlainText.Number(Confidence.Percent)} % of the cases, before a chance of {PlainText.Number(AcceptedRisk.Percent)} % of an alarm";
}
