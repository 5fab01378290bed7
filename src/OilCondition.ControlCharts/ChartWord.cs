namespace OilCondition.ControlCharts;

/// <summary>What a signal adds to the text of a point.</summary>
internal static class ChartWord
{
    public static string Of(ChartSignal signal) =>
        signal switch
        {
            ChartSignal.Above => ", above",
            ChartSignal.Below => ", below",
            _ => "",
        };
}
