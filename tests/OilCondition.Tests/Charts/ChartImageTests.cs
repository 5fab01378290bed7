extern alias charts;

using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Charts;

/// <summary>The pictures of docs/charts.md are what the command of the page draws, each with words for those who do not see it.</summary>
public class ChartImageTests
{
    [Fact]
    public void No_picture_is_stale()
    {
        var page = RepositoryFiles.Read("docs", "charts.md");
        foreach (var (name, chart) in AllCharts.OfPage())
        {
            RepositoryFiles
                .Read("docs", "images", name + ".svg")
                .ShouldBe(chart.ToSvg(), $"{name}: draw the pictures of docs/charts.md anew");
            page.ShouldContain($"](images/{name}.svg)");
        }
    }
}
