using OilCondition.ControlCharts;

namespace OilCondition.Tests.ControlCharts;

/// <summary>Every door of the charts names the field that is wrong; NaN passes none.</summary>
public class ChartBadInputTests
{
    private static readonly Dictionary<string, (string Field, Action Call)> Doors = new(StringComparer.Ordinal)
    {
        ["ewma sigma"] = ("sigma", () => new EwmaChart(1, 0)),
        ["ewma weight"] = ("weight", () => new EwmaChart(1, 1, double.NaN)),
        ["ewma weight high"] = ("weight", () => new EwmaChart(1, 1, 1.1)),
        ["ewma values"] = ("values", () => new EwmaChart(1, 1).Plot([double.NaN])),
        ["ewma count"] = ("count", () => new EwmaChart(1, 1).HalfWidthAt(0)),
        ["cusum interval"] = ("decisionInterval", () => new CusumChart(1, 1, double.NaN)),
        ["cusum allowance"] = ("allowance", () => new CusumChart(1, -1, 2)),
        ["cusum sigma"] = ("sigma", () => CusumChart.ForOneSigma(1, -1)),
        ["run length"] = ("shift", () => CusumRunLength.TwoSided(double.NaN)),
        ["run length interval"] = ("decisionInterval", () => CusumRunLength.Siegmund(0, 0.5, 0)),
        ["individuals"] = ("values", () => IndividualsChart.Of([1])),
    };

    public static TheoryData<string> Names() => [.. Doors.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Wrong_input_is_named(string door)
    {
        var (field, call) = Doors[door];
        Should.Throw<ArgumentException>(call).ParamName.ShouldBe(field);
    }
}
