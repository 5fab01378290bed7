using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>By when a treatment must be done, and why then.</summary>
/// <remarks>
/// The earliest of: an alarm that stands, after the time for which it may; the moment at which the chance of passing the alarm figure reaches the accepted
/// risk; for free water at standstill the next outage, when the machine will stand; and for any alert the time for which it may stand where nothing else tells.
/// </remarks>
internal sealed record RiskDate(DateTimeOffset At, string Why)
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
        var first = dates.FirstOrDefault() ?? new RiskDate(asOf + options.AlertResponse, "an alert stands");
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
            return new RiskDate(
                asOf + options.AlarmResponse,
                $"the alarm of the {finding.Measurand.Name} may stand so long"
            );
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
                ? new RiskDate(outage.From, $"the machine stands then ({outage.Name}), and water comes out")
                : new RiskDate(patience, "free water at standstill may stand so long");
        }

        return risk is { } when
            ? new RiskDate(
                when,
                $"the chance of passing the alarm figure of the {finding.Measurand.Name} reaches {PlainText.Number(options.AcceptedRisk.Percent)} %"
            )
            : new RiskDate(patience, $"the alert of the {finding.Measurand.Name} may stand so long");
    }

    private static IEnumerable<RemainingLife.Forecast> Forecasts(ConditionAssessment assessment, Measurand measurand) =>
        assessment
            .States.Where(state => state.Measurand.Equals(measurand))
            .SelectMany(state => state.Lives)
            .OfType<RemainingLife.Forecast>()
            .Where(life => life.Series.Measurand.IsWorse(life.Side));
}
