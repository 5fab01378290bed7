using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Cleanliness classes after NAS 1638 from differential counts per 100 mL.</summary>
/// <remarks>
/// <para>
/// Five ranges, classes 00 to 12, limits included; above class 12 the result is <c>&gt;12</c>. There is one table, of whole numbers. The class of a
/// sample is the worst of its ranges (common practice: the standard has no reporting rule).
/// </para>
/// <para>
/// The standard is inactive for new designs and was made for the microscope, sizes in µm by longest dimension; a counter calibrated after
/// ISO 11171 gives classes of AS4059 table 1, which has the same limits.
/// </para>
/// <para>Source: NAS 1638, class table (four secondary reproductions, misprints resolved by the sums of AS4059 table 2).</para>
/// </remarks>
/// <example><code>Nas1638.ClassOf(new DifferentialCounts(30000, 5800, 900, 150, 20)).Overall.ToString(); // 8</code></example>
public static class Nas1638
{
    /// <summary>Where the table comes from.</summary>
    public static Source Source { get; } =
        new(SourceKind.Standard, "NAS 1638, seen in secondary reproductions", "class table");

    /// <summary>The class of counts.</summary>
    /// <param name="counts">The counts in 5-15, 15-25, 25-50, 50-100 and above 100 µm.</param>
    /// <returns>The class of each range and the worst, 00 to 12 or above the table.</returns>
    /// <exception cref="ArgumentNullException">The counts are missing.</exception>
    public static DifferentialClass ClassOf(DifferentialCounts counts) => new(Guard.NotNull(counts));

    /// <summary>The most particles that still belong to a class in one range; also the limits of AS4059 table 1.</summary>
    /// <param name="range">The range.</param>
    /// <param name="cleanlinessClass">00 to 12.</param>
    /// <returns>Particles per 100 mL, inclusive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The class is 000 or above the table, or the range is not one of the named.</exception>
    public static int UpperLimitPer100Millilitres(DifferentialRange range, CleanlinessClass cleanlinessClass) =>
        range is >= DifferentialRange.BToC and <= DifferentialRange.AboveF
            ? ClassTables.Differential.UpperLimit((int)range, cleanlinessClass, nameof(cleanlinessClass))
            : throw new ArgumentOutOfRangeException(nameof(range), $"range is {range}; allowed: BToC to AboveF.");
}
