using OilCondition.Water;

namespace OilCondition.Treatment;

/// <summary>What can be changed about a vacuum dehydration.</summary>
public enum PlanKnob
{
    /// <summary>More oil flow.</summary>
    Flow,

    /// <summary>A higher process temperature, up to the lowest of the limits of oil, seals and unit.</summary>
    ProcessTemperature,

    /// <summary>More heater power.</summary>
    HeaterPower,

    /// <summary>A lower chamber pressure.</summary>
    Vacuum,

    /// <summary>More sweep air of the same kind; where there is none, dry air at 0.1 % of the oil's mass flow.</summary>
    SweepAir,

    /// <summary>Less water that comes in.</summary>
    WaterIngress,
}
