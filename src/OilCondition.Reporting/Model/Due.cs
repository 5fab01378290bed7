namespace OilCondition.Reporting;

/// <summary>By when something is to be done about a machine, and why by then.</summary>
internal sealed record Due(DateTimeOffset? At, string Why)
{
    /// <summary>The date of a decision, else that by which a limit may be reached; an alarm is due now.</summary>
    public static Due Of(ConditionAssessment assessment, IReadOnlyList<TreatmentDecision> decisions, ReportTexts texts)
    {
        if (decisions.OrderBy(one => one.RiskDate).FirstOrDefault() is { } first)
        {
            return new Due(first.RiskDate, texts.Sentences.RiskReason(first));
        }

        if (assessment.Worst == Severity.Alarm)
        {
            return new Due(assessment.Options.AsOf, texts["by.alarm"]);
        }

        var limit = assessment
            .Problems.Where(problem => problem.Severity >= Severity.Alert)
            .Select(problem => problem.NextLimitFrom)
            .Min();
        return limit is { } at ? new Due(at, texts["by.life"])
            : assessment.Worst == Severity.Alert ? new Due(null, texts["by.alert"])
            : new Due(null, "");
    }
}
