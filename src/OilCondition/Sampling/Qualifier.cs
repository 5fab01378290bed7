namespace OilCondition;

/// <summary>How a reported number is to be read.</summary>
public enum Qualifier
{
    /// <summary>The value itself.</summary>
    None,

    /// <summary>Below the value, as at a detection limit.</summary>
    LessThan,

    /// <summary>Above the value, as at the end of an instrument's range.</summary>
    GreaterThan,

    /// <summary>About the value, as when a code stands for a range of counts.</summary>
    Approximately,
}
