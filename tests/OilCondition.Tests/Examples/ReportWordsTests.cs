using OilCondition.Limits;
using OilCondition.Reporting;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Examples;

public class ReportWordsTests
{
    /// <summary>Water that rises from 76 to 1035 mg/kg in six weeks: no cell of the report may say beside the alarm that nothing moves.</summary>
    [Fact]
    public void The_report_never_calls_a_measurand_in_alarm_without_a_trend()
    {
        double[] water = [76, 80, 78, 82, 300, 620, 1035];
        var history = Invented.History(
            water.Select((value, i) => Invented.Sample(i, 7 * i, (Measurands.WaterContent, new Reading(value))))
        );
        var assessment = ConditionAssessor.Assess(
            history,
            new LimitSet(
                "invented",
                [
                    new Limit(
                        Measurands.WaterContent,
                        LimitKind.Absolute,
                        new LimitBand(300, 500),
                        null,
                        Source.UserData("invented")
                    ),
                ]
            ),
            new AssessmentOptions(Invented.Start.AddDays(7 * water.Length))
        );

        assessment.Worst.ShouldBe(Severity.Alarm);
        var html = ConditionReport.ToHtml("Oil condition", [assessment], new ReportOptions("invented"));
        html.ShouldContain("1035 mg/kg");
        html.ShouldNotContain("no significant trend", Case.Insensitive);
        html.ShouldNotContain("no trend towards", Case.Insensitive);
    }
}
