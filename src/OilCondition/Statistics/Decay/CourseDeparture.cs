namespace OilCondition.Statistics;

/// <summary>How readings depart from one exponential.</summary>
public enum CourseDeparture
{
    /// <summary>They do not, as far as the readings tell.</summary>
    None,

    /// <summary>They fall faster at first, and then slower, than one exponential: what goes quickly hides how slowly the rest goes.</summary>
    FasterAtFirst,

    /// <summary>They fall slower at first: a dead time, oil that warms up, free water at the rate that heat and pump allow.</summary>
    SlowerAtFirst,
}
