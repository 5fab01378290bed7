namespace OilCondition.Water;

/// <summary>What a band around a fitted saturation curve is to hold.</summary>
public enum BandOf
{
    /// <summary>The true curve: confidence band.</summary>
    Curve,

    /// <summary>One new measurement, scatter included: prediction band.</summary>
    NewMeasurement,
}
