namespace OilCondition.Cleanliness;

/// <summary>The sizes of a code after ISO 4406.</summary>
public enum CodeSize
{
    /// <summary>4 µm(c).</summary>
    At4,

    /// <summary>6 µm(c), or 5 µm by microscope.</summary>
    At6,

    /// <summary>14 µm(c), or 15 µm by microscope.</summary>
    At14,
}
