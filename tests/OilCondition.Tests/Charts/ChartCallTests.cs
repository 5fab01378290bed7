extern alias charts;

using charts::OilCondition.Charts;

namespace OilCondition.Tests.Charts;

/// <summary>The three calls that the package was made for.</summary>
public class ChartCallTests
{
    /// <summary>A vendor: every picture of one assessment into a report.</summary>
    [Fact]
    public void All_charts_of_an_assessment_go_into_a_page()
    {
        var assessment = AllCharts.Assessments.Single(one => one.History.Machine.Id == "HP-DTG1");

        var figures = AssessmentCharts
            .Of(assessment)
            .Select(chart => $"<figure>{chart.ToSvg()}<figcaption>{chart.Description}</figcaption></figure>")
            .ToList();

        // The cleanup that is under way, six limited measurands, the oil's curve, its cleanliness.
        figures.Count.ShouldBe(9);
        figures[0].ShouldContain("vacuum dehydration");
        figures.ShouldAllBe(figure => figure.StartsWith("<figure><svg ", StringComparison.Ordinal));
    }

    /// <summary>An analyst: one measurand, looked at in a notebook.</summary>
    [Fact]
    public void One_measurand_is_one_call()
    {
        var assessment = Drawn.Rising();

        TrendChart.Of(assessment, Measurands.AcidNumber).ToSvg().ShouldContain("M1 invented machine: acid number");
    }

    /// <summary>An integrator: the picture of an alert as an attachment of a work request.</summary>
    [Fact]
    public void The_pictures_of_an_alert_are_attachments()
    {
        var assessment = Drawn.Rising(alarm: 0.2);
        var alert = assessment.Alerts.Single(one => one.Severity == Severity.Alarm);

        var pictures = AssessmentCharts.Of(assessment, alert.Problem).Select(chart => chart.ToPng()).ToList();

        pictures.Count.ShouldBe(1);
        pictures[0].Take(4).ShouldBe([0x89, (byte)'P', (byte)'N', (byte)'G']);
    }
}
