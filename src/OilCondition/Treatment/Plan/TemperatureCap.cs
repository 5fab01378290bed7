namespace OilCondition.Treatment;

/// <summary>Whose limit holds the process temperature below the setting of the thermostat.</summary>
public enum TemperatureCap
{
    /// <summary>Nobody's: the unit runs at its setting.</summary>
    None,

    /// <summary>The oil's.</summary>
    Oil,

    /// <summary>That of seals, hoses and coating of the reservoir.</summary>
    Seals,

    /// <summary>The unit's.</summary>
    Unit,
}
