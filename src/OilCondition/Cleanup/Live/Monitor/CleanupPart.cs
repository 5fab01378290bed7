namespace OilCondition.Cleanup;

/// <summary>A part of what a cleanup is to reach.</summary>
public enum CleanupPart
{
    /// <summary>The water content.</summary>
    Water,

    /// <summary>The count at 4 µm(c) and above.</summary>
    ParticlesAt4,

    /// <summary>The count at 6 µm(c) and above.</summary>
    ParticlesAt6,

    /// <summary>The count at 14 µm(c) and above.</summary>
    ParticlesAt14,
}
