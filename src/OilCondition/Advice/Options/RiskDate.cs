using OilCondition.Prognosis;

namespace OilCondition;

/// <summary>By when a treatment must be done, and why then.</summary>
/// <remarks>
/// The earliest of: an alarm that stands, after the time for which it may; the moment at which the chance of passing the alarm figure reaches the accepted
/// risk; for free water at standstill the next outage, when the machine will stand; and for any alert the time for which it may stand where nothing else tells.
/// </remarks>
internal sealed record RiskDate(DateTimeOffset At, Words Why)
{
    public static RiskDate Of(
        ConditionAssessment assessment,
        IReadOnlyList<Finding> findings,
        MachineSite site,
        DecisionOptions options
    )
    {
        var asOf = assessment.Options.AsOf;
        var dates = findings.Select(finding => Of(finding, assessment, site, options)).OrderBy(one => one.At);
        var first = dates.FirstOrDefault() ?? new RiskDate(asOf + options.AlertResponse, say => say.AnAlertStands());
        return first.At < asOf ? first with { At = asOf } : first;
    }

    private static RiskDate Of(
        Finding finding,
        ConditionAssessment assessment,
        MachineSite site,
        DecisionOptions options
    )
    {
        var asOf = assessment.Options.AsOf;
        if (finding.Severity == Severity.Alarm)
        {
            return new RiskDate(asOf + options.AlarmResponse, say => say.AlarmStands(finding.Measurand));
        }

        var risk = Forecasts(assessment, finding.Measurand)
            .Select(life =>
                life.Crossing.TryAt(options.AcceptedRisk.DecimalFractions, out var at) ? at : (DateTimeOffset?)null
            )
            .Where(at => at is not null)
            .Min();
        var standing = finding is FreeWaterFinding ? site.Outages.FirstOrDefault(one => one.From > asOf) : null;
        var patience = asOf + options.AlertResponse;
        if (finding is FreeWaterFinding)
        {
            return standing is { } outage && outage.From < patience
                ? new RiskDate(outage.From, say => say.StandsIn(outage))
                : new RiskDate(patience, say => say.FreeWaterStands());
        }

        return risk is { } when
            ? new RiskDate(when, say => say.ChanceOfAlarm(finding.Measurand, options.AcceptedRisk))
            : new RiskDate(patience, say => say.AlertStands(finding.Measurand));
    }

    private static IEnumerable<RemainingLife.Forecast> Forecasts(ConditionAssessment assessment, Measurand measurand) =>
        assessment
            .States.Where(state => state.Measurand.Equals(measurand))
            .SelectMany(state => state.Lives)
            .OfType<RemainingLife.Forecast>()
            .Where(life => life.Series.Measurand.IsWorse(life.Side));
}
