namespace OilCondition.ControlCharts;

/// <summary>What a control chart says at one reading.</summary>
public enum ChartSignal
{
    /// <summary>Within the limits.</summary>
    None,

    /// <summary>Above the upper limit: the level has risen.</summary>
    Above,

    /// <summary>Below the lower limit: the level has fallen.</summary>
    Below,
}
