using OilCondition.ControlCharts;

namespace OilCondition.Tests.ControlCharts;

/// <summary>What charts print, against texts written by hand.</summary>
public class ChartTextTests
{
    private static readonly Dictionary<string, object> Results = new(StringComparer.Ordinal)
    {
        ["12.3, limits 7 to 13"] = new ChartPoint(12.3, 7, 13),
        ["14, limits 7 to 13, above"] = new ChartPoint(14, 7, 13),
        ["sums 4.5 up, 0 down, above"] = new CusumPoint(4.5, 0, ChartSignal.Above, 3, 0),
        ["target 50, settled limits 48 to 52"] = new EwmaChart(50, 2, 0.2, 3),
        ["target 10, allowance 0.5, signal above 5"] = CusumChart.ForOneSigma(10, 1),

        // Mean moving range 1, sigma 1/1.128 = 0.887.
        ["mean 10.5, limits 7.84 to 13.2"] = IndividualsChart.Of([10, 11, 10, 11]),
    };

    public static TheoryData<string> Texts() => [.. Results.Keys];

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_chart_prints_itself(string text) => Results[text].ToString().ShouldBe(text);
}
