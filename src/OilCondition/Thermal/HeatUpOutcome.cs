namespace OilCondition.Thermal;

/// <summary>Whether a tank comes to a temperature.</summary>
public enum HeatUpOutcome
{
    /// <summary>After the stated time.</summary>
    Reached,

    /// <summary>It is there at the start; the time is 0.</summary>
    AtTarget,

    /// <summary>The temperature moves the other way: the target lies behind. The time is 0.</summary>
    MovesAway,

    /// <summary>Losses balance the heater before, or exactly at, the target: never. The time is 0.</summary>
    StopsShort,
}
