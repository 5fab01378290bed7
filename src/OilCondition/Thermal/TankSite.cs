namespace OilCondition.Thermal;

/// <summary>Where a tank stands.</summary>
public enum TankSite
{
    /// <summary>Indoors or out of the wind.</summary>
    Sheltered,

    /// <summary>In the open.</summary>
    Exposed,
}
