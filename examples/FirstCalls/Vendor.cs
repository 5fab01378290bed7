using OilCondition;
using OilCondition.Reporting;

namespace FirstCalls;

/// <summary>From a fleet to one report, the same bytes for the same input.</summary>
public static class Vendor
{
    public static string Run(IReadOnlyList<OilHistory> fleet, LimitSet limits, DateTimeOffset asOf)
    {
        // snippet
        var assessments = fleet
            .AsParallel()
            .AsOrdered()
            .Select(history => ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf)))
            .ToList();

        var html = ConditionReport.ToHtml("Oil condition, June", assessments);
        var json = assessments.Select(assessment => assessment.ToJson());
        // end

        return html + string.Concat(json);
    }
}
