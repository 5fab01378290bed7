namespace OilCondition.Statistics;

/// <summary>Which side of a population a tolerance limit bounds.</summary>
public enum ToleranceSide
{
    /// <summary>Most values lie below it: water, metals, counts.</summary>
    Upper,

    /// <summary>Most values lie above it: antioxidant, oxidation stability.</summary>
    Lower,
}
