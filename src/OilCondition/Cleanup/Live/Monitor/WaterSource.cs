namespace OilCondition.Cleanup;

/// <summary>Where a water content comes from.</summary>
public enum WaterSource
{
    /// <summary>There is none.</summary>
    None,

    /// <summary>A moisture sensor with a saturation curve: dissolved water only.</summary>
    Sensor,

    /// <summary>A titration: all water.</summary>
    Titration,
}
