namespace OilCondition;

/// <summary>What a problem is about. Its word stands in alerts, recommendations, JSON and alert keys, and does not change.</summary>
public enum ProblemTopic
{
    /// <summary>Water in the oil, dissolved or free.</summary>
    Water,

    /// <summary>Dirt: particles, and silicon from dust.</summary>
    Dirt,

    /// <summary>Wear metals.</summary>
    Wear,

    /// <summary>Ageing of the oil.</summary>
    OilAgeing,

    /// <summary>Products of ageing that settle as varnish.</summary>
    Varnish,

    /// <summary>The wrong oil, a mixture or dilution: viscosity, density, flash point, additive elements.</summary>
    OilIdentity,

    /// <summary>A treatment that is under way: the work goes on, stalls, or is done.</summary>
    Cleanup,

    /// <summary>None of the others, or a measurand beyond a limit on the side on which it gets better: the cause has to be looked for.</summary>
    Other,

    /// <summary>Samples are not taken as the sampling plan asks.</summary>
    Sampling,

    /// <summary>What is on record is in doubt: a sample of another oil, a contradiction, a change that no event explains.</summary>
    Records,
}
