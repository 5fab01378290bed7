namespace OilCondition.Cleanliness;

/// <summary>Which printing of the cumulative table of AS4059 is used.</summary>
/// <remarks>
/// Both are in use and they disagree for counts between their limits: 19 480 particles per 100 mL at size B are class 7 by the exact table
/// (limit of class 6: 19 462) and class 6 by the rounded one (19 500). State with a class which was used.
/// </remarks>
public enum As4059Printing
{
    /// <summary>Whole numbers, each the running sum of the differential limits.</summary>
    Exact,

    /// <summary>Rounded to three figures.</summary>
    Rounded,
}
