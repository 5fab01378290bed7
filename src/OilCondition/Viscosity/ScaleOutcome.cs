namespace OilCondition.Viscosity;

/// <summary>Whether a viscosity lies on the scale of ASTM D341, 0.21 to 2e7 mm²/s; both ends are from memory.</summary>
public enum ScaleOutcome
{
    /// <summary>On the scale.</summary>
    OnScale,

    /// <summary>Thicker than 2e7 mm²/s: for every practical end the oil no longer flows. The viscosity stated is 2e7 mm²/s.</summary>
    ThickerThanScale,

    /// <summary>Thinner than 0.21 mm²/s. The viscosity stated is 0.21 mm²/s.</summary>
    ThinnerThanScale,
}
