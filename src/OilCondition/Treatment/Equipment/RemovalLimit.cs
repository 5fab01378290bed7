namespace OilCondition.Treatment;

/// <summary>What bounds the removal of water in a vacuum chamber at a moment.</summary>
public enum RemovalLimit
{
    /// <summary>Nothing leaves: the oil is too cold, or the vacuum too shallow, for water to boil, and there is no air dry enough to carry it.</summary>
    TooColdOrShallow,

    /// <summary>Free water flashes until the oil has cooled to its boiling point: heat to the oil sets the rate.</summary>
    Heat,

    /// <summary>The vacuum pump cannot swallow more: the pressure has risen above the set one.</summary>
    VacuumPump,

    /// <summary>The sweep air leaves saturated: its flow sets the rate.</summary>
    SweepAir,

    /// <summary>The exchange in the chamber, η: the excess falls exponentially.</summary>
    SinglePass,
}
