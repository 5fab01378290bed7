namespace OilCondition.Thermal;

/// <summary>Where a tank stands and how it is clad.</summary>
public enum TankSurface
{
    /// <summary>Bare steel, indoors or out of the wind.</summary>
    ShelteredBare,

    /// <summary>With heat insulation, indoors or out of the wind.</summary>
    ShelteredInsulated,

    /// <summary>Bare steel, in the open.</summary>
    ExposedBare,

    /// <summary>With heat insulation, in the open.</summary>
    ExposedInsulated,
}
