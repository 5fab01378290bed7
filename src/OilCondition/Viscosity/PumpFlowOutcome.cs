namespace OilCondition.Viscosity;

/// <summary>What a pump with a viscosity limit can hold at an oil temperature.</summary>
public enum PumpFlowOutcome
{
    /// <summary>The oil is within the limit: the full flow.</summary>
    FullFlow,

    /// <summary>The oil is thicker than the limit: the reduced flow stated.</summary>
    Reduced,

    /// <summary>The oil is thicker than the scale of 2e7 mm²/s: no flow to count on. The flow stated is an upper bound.</summary>
    ThickerThanScale,
}
