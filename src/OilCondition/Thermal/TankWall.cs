namespace OilCondition.Thermal;

/// <summary>How a tank is clad.</summary>
public enum TankWall
{
    /// <summary>Bare steel.</summary>
    Uninsulated,

    /// <summary>With heat insulation.</summary>
    Insulated,
}
