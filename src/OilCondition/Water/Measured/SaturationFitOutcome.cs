namespace OilCondition.Water;

/// <summary>Whether measurements gave a saturation curve.</summary>
public enum SaturationFitOutcome
{
    /// <summary>A curve with its errors.</summary>
    Determined,

    /// <summary>Fewer than three measurements: the scatter is unknown.</summary>
    TooFewMeasurements,

    /// <summary>All measurements at one temperature (within 0.1 K): no slope.</summary>
    OneTemperature,

    /// <summary>The saturation does not rise with temperature, or so steeply that B exceeds 10 000 K: look at the measurements.</summary>
    NotPlausible,
}
