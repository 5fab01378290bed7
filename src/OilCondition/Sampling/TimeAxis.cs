namespace OilCondition;

/// <summary>What the time axis of a series counts.</summary>
public enum TimeAxis
{
    /// <summary>Days of the calendar.</summary>
    Calendar,

    /// <summary>Oil hours, shown as days at the mean duty of the series.</summary>
    OilHours,
}
