namespace OilCondition.Cleanliness;

/// <summary>Where the mean of a particle count lies, by counting statistics alone.</summary>
/// <remarks>Sampling and calibration scatter come on top and are often larger.</remarks>
public sealed record CountInterval
{
    internal CountInterval(ParticleCount count, double confidence, double lower, double upper)
    {
        Confidence = confidence;
        LowerParticles = lower;
        UpperParticles = upper;
        LowerPerMillilitre = count.PerMillilitreOf(lower);
        UpperPerMillilitre = count.PerMillilitreOf(upper);
    }

    /// <summary>Two-sided confidence.</summary>
    public double Confidence { get; }

    /// <summary>Lower end, particles in the volume analysed; 0 when none was counted.</summary>
    public double LowerParticles { get; }

    /// <summary>Upper end, particles in the volume analysed.</summary>
    public double UpperParticles { get; }

    /// <summary>Lower end, particles per millilitre of undiluted oil.</summary>
    public double LowerPerMillilitre { get; }

    /// <summary>Upper end, particles per millilitre of undiluted oil.</summary>
    public double UpperPerMillilitre { get; }

    /// <summary>Scale number after ISO 4406 of the lower end.</summary>
    public int LowestScaleNumber => Iso4406.ScaleNumber(LowerPerMillilitre);

    /// <summary>Scale number after ISO 4406 of the upper end; 29 for above the table.</summary>
    public int HighestScaleNumber => Iso4406.ScaleNumber(UpperPerMillilitre);
}
