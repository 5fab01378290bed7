namespace OilCondition.Water;

/// <summary>How a saturation curve came about, and so how far to trust it.</summary>
public enum SaturationBasis
{
    /// <summary>Constants A and B were given.</summary>
    Coefficients,

    /// <summary>Drawn through two measured saturations: no scatter is known.</summary>
    TwoPoints,

    /// <summary>Fitted to three or more measurements.</summary>
    Fitted,

    /// <summary>Estimated from hydrogen-to-carbon ratio and molar mass of an oil without additives.</summary>
    HydrocarbonRelation,

    /// <summary>One measurement fixes the level; the slope B is an assumption.</summary>
    OnePointAssumedSlope,

    /// <summary>Another curve, multiplied by an ageing factor that is a modelling choice.</summary>
    Aged,
}
