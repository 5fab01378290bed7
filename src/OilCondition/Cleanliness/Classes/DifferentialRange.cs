namespace OilCondition.Cleanliness;

/// <summary>The size ranges of NAS 1638 and of AS4059 table 1, named after the sizes of AS4059 between which they lie.</summary>
public enum DifferentialRange
{
    /// <summary>5 to 15 µm; 6 to 14 µm(c).</summary>
    BToC,

    /// <summary>15 to 25 µm; 14 to 21 µm(c).</summary>
    CToD,

    /// <summary>25 to 50 µm; 21 to 38 µm(c).</summary>
    DToE,

    /// <summary>50 to 100 µm; 38 to 70 µm(c).</summary>
    EToF,

    /// <summary>Above 100 µm; above 70 µm(c).</summary>
    AboveF,
}
