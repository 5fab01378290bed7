namespace OilCondition;

/// <summary>What a measurand tells of, which decides what is recommended when it goes beyond a limit.</summary>
public enum MeasurandTopic
{
    /// <summary>None of the others: its cause has to be looked for.</summary>
    Other,

    /// <summary>Water in the oil.</summary>
    Water,

    /// <summary>Dirt: particles, and silicon from dust.</summary>
    Particles,

    /// <summary>Ageing of the oil: acid and base number, oxidation, antioxidant, hours in service.</summary>
    Ageing,

    /// <summary>Products of ageing that settle as varnish.</summary>
    Varnish,

    /// <summary>Which oil it is, and whether it is mixed or diluted: viscosity, density, flash point, additive elements.</summary>
    OilIdentity,

    /// <summary>Wear metals.</summary>
    Wear,
}
