namespace OilCondition.Water;

/// <summary>The saturation at one temperature with its doubt. Each end answers as the curve does: split, equilibrium, cool-down.</summary>
/// <example>
/// <code>
/// var band = fit.BandAt(Temperature.FromDegreesCelsius(15), 0.95, BandOf.Curve);
/// var mostFreeWater = band.Lower.Split(total).Free;
/// var leastFreeWater = band.Upper.Split(total).Free;
/// </code>
/// </example>
public sealed record SaturationBand
{
    internal SaturationBand(
        SaturationPoint lower,
        SaturationPoint estimate,
        SaturationPoint upper,
        double confidence,
        BandOf of
    )
    {
        Lower = lower;
        Estimate = estimate;
        Upper = upper;
        Confidence = confidence;
        Of = of;
    }

    /// <summary>Lower end: the oil holds no less.</summary>
    public SaturationPoint Lower { get; }

    /// <summary>The curve itself.</summary>
    public SaturationPoint Estimate { get; }

    /// <summary>Upper end: the oil holds no more.</summary>
    public SaturationPoint Upper { get; }

    /// <summary>Two-sided confidence level.</summary>
    public double Confidence { get; }

    /// <summary>What the band is to hold.</summary>
    public BandOf Of { get; }
}
