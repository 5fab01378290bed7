namespace OilCondition;

/// <summary>In which direction a measurand gets worse.</summary>
public enum WorseDirection
{
    /// <summary>More is worse, as with water and particles.</summary>
    Higher,

    /// <summary>Less is worse, as with antioxidant and oxidation stability.</summary>
    Lower,

    /// <summary>Any departure is worse, as with viscosity.</summary>
    EitherWay,
}
