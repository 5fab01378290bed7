namespace OilCondition;

/// <summary>On which side of a measurand a limit lies, or on which side it gets worse.</summary>
public enum LimitSide
{
    /// <summary>Above: more is worse, as with water and particles.</summary>
    Upper,

    /// <summary>Below: less is worse, as with antioxidant and oxidation stability.</summary>
    Lower,

    /// <summary>On either side, as with viscosity. A single figure never has it.</summary>
    Both,
}
