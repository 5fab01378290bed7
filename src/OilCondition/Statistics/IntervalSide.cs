namespace OilCondition.Statistics;

/// <summary>Which ends of an interval are asked for. A one-sided interval spends its whole doubt on one end.</summary>
public enum IntervalSide
{
    /// <summary>Both ends, half of the doubt at each.</summary>
    Both,

    /// <summary>Only the lower end: 'not below'.</summary>
    Lower,

    /// <summary>Only the upper end: 'not above', 'done by'.</summary>
    Upper,
}
