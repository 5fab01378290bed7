namespace OilCondition.Cleanup;

/// <summary>What to look at when a cleanup stalls. The work itself is for licensed people, by the maker's instructions.</summary>
internal enum StallCheck
{
    /// <summary>Absolute pressure in the chamber by a second gauge; leaks; vacuum pump oil and condenser.</summary>
    ChamberPressure,

    /// <summary>Flow and dryness of the sweep air.</summary>
    SweepAir,

    /// <summary>Oil temperature in the chamber and in the tank.</summary>
    OilTemperature,

    /// <summary>Heater stages, thermostat, flow switch, lagging.</summary>
    Heater,

    /// <summary>Cooler, shaft seals, breather, wash water, and steam.</summary>
    WaterSources,

    /// <summary>Water standing at the bottom of the tank or in dead legs.</summary>
    StandingWater,

    /// <summary>Bypass and relief valves of purifier and filter.</summary>
    BypassValves,

    /// <summary>Suction and return: at opposite ends, with the whole charge between them.</summary>
    SuctionAndReturn,

    /// <summary>Oil flow as measured, compared with the nameplate.</summary>
    OilFlow,

    /// <summary>A titration beside the sensor, and the saturation curve of this very oil.</summary>
    TitrationBesideSensor,

    /// <summary>What runs into the condensate vessel in an hour.</summary>
    Condensate,

    /// <summary>More readings.</summary>
    MoreReadings,
}
