namespace OilCondition.Water;

/// <summary>Where an oil ends up when it stays in contact with water vapour.</summary>
public enum EquilibriumOutcome
{
    /// <summary>Below saturation: the vapour decides how much water stays dissolved.</summary>
    Unsaturated,

    /// <summary>
    /// The vapour pressure reaches or exceeds that of water at the oil's temperature: the oil stays saturated, and vapour may
    /// condense into it without limit.
    /// </summary>
    Saturated,
}
