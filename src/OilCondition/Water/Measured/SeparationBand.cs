namespace OilCondition.Water;

/// <summary>The temperature at which water begins to separate, with the doubt of the fitted curve.</summary>
public sealed record SeparationBand
{
    internal SeparationBand(
        SeparationPoint coldest,
        SeparationPoint estimate,
        SeparationPoint warmest,
        double confidence
    )
    {
        Coldest = coldest;
        Estimate = estimate;
        Warmest = warmest;
        Confidence = confidence;
    }

    /// <summary>The coldest temperature that the measurements allow; the end of the range of the library where they set no bound.</summary>
    public SeparationPoint Coldest { get; }

    /// <summary>From the curve itself.</summary>
    public SeparationPoint Estimate { get; }

    /// <summary>The warmest temperature that the measurements allow: keep the oil above it to be on the safe side.</summary>
    public SeparationPoint Warmest { get; }

    /// <summary>Two-sided confidence level.</summary>
    public double Confidence { get; }
}
