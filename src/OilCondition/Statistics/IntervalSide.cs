namespace OilCondition.Statistics;

/// <summary>Which ends of an interval are asked for. A one-sided interval leaves its whole chance of a miss to one end.</summary>
public enum IntervalSide
{
    /// <summary>Both ends, each with half of the chance of a miss.</summary>
    Both,

    /// <summary>Only the lower end: 'not below'.</summary>
    Lower,

    /// <summary>Only the upper end: 'not above', 'done by'.</summary>
    Upper,
}
