using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Particles per 100 mL in the five size ranges of NAS 1638 and of AS4059 table 1, and their class.</summary>
/// <remarks>
/// <para>NAS 1638: 5-15, 15-25, 25-50, 50-100, above 100 µm. AS4059: 6-14, 14-21, 21-38, 38-70, above 70 µm(c). The limits are the same.</para>
/// <para>
/// Classes 00 to 12, limits included; above class 12 the result is <c>&gt;12</c>. There is one table, of whole numbers. The class of a sample is the worst
/// of its ranges (common practice: NAS 1638 has no reporting rule). NAS 1638 is inactive for new designs and was made for the microscope, sizes in µm by
/// longest dimension; a counter calibrated after ISO 11171 gives classes of AS4059.
/// </para>
/// <para>Source: NAS 1638, class table (four secondary reproductions, misprints resolved by the sums of AS4059 table 2).</para>
/// </remarks>
/// <example><code>new DifferentialCounts(30000, 5800, 900, 150, 20).Class; // 8, decided by 15 to 25 µm</code></example>
public sealed record DifferentialCounts
{
    /// <summary>Counts in the five ranges.</summary>
    /// <param name="bToCPer100Millilitres">Particles of 5 to 15 µm, or 6 to 14 µm(c), per 100 mL.</param>
    /// <param name="cToDPer100Millilitres">Particles of 15 to 25 µm, or 14 to 21 µm(c).</param>
    /// <param name="dToEPer100Millilitres">Particles of 25 to 50 µm, or 21 to 38 µm(c).</param>
    /// <param name="eToFPer100Millilitres">Particles of 50 to 100 µm, or 38 to 70 µm(c).</param>
    /// <param name="aboveFPer100Millilitres">Particles above 100 µm, or above 70 µm(c).</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite.</exception>
    public DifferentialCounts(
        double bToCPer100Millilitres,
        double cToDPer100Millilitres,
        double dToEPer100Millilitres,
        double eToFPer100Millilitres,
        double aboveFPer100Millilitres
    )
    {
        Per100Millilitres =
        [
            ClassLimits.Count(bToCPer100Millilitres, nameof(bToCPer100Millilitres)),
            ClassLimits.Count(cToDPer100Millilitres, nameof(cToDPer100Millilitres)),
            ClassLimits.Count(dToEPer100Millilitres, nameof(dToEPer100Millilitres)),
            ClassLimits.Count(eToFPer100Millilitres, nameof(eToFPer100Millilitres)),
            ClassLimits.Count(aboveFPer100Millilitres, nameof(aboveFPer100Millilitres)),
        ];
    }

    /// <summary>Where the table comes from.</summary>
    public static Source Source { get; } =
        new(SourceKind.Standard, "NAS 1638, seen in secondary reproductions", "class table");

    /// <summary>The counts per 100 mL, the range of the smallest particles first.</summary>
    public IReadOnlyList<double> Per100Millilitres { get; }

    /// <summary>The class of each range, in the same order.</summary>
    public IReadOnlyList<CleanlinessClass> Classes =>
        [.. Per100Millilitres.Select((count, range) => ClassTables.Differential.ClassOf(range, count))];

    /// <summary>The worst class of the five, 00 to 12 or above the table.</summary>
    public CleanlinessClass Class => Classes.Aggregate((a, b) => a.Rank >= b.Rank ? a : b);

    /// <summary>The size, B to F, from which the range with the worst class begins; of several the one of the smallest particles.</summary>
    public As4059Size DecidingSize
    {
        get
        {
            var worst = Class;
            return As4059Size.B + Classes.TakeWhile(one => one != worst).Count();
        }
    }

    /// <summary>The most particles that still belong to a class in one range.</summary>
    /// <param name="size">The size, B to F, from which the range begins.</param>
    /// <param name="cleanlinessClass">00 to 12.</param>
    /// <returns>Particles per 100 mL, inclusive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The class is 000 or above the table, or no range begins at the size.</exception>
    public static int UpperLimitPer100Millilitres(As4059Size size, CleanlinessClass cleanlinessClass) =>
        size is >= As4059Size.B and <= As4059Size.F
            ? ClassTables.Differential.UpperLimit(size - As4059Size.B, cleanlinessClass, nameof(cleanlinessClass))
            : throw new ArgumentOutOfRangeException(nameof(size), $"size is {size}; allowed: B to F.");

    /// <summary>Differential counts from cumulative ones: each range is the count at its lower size less the count at its upper size.</summary>
    /// <param name="countsPer100Millilitres">Cumulative counts per 100 mL at sizes B, C, D, E and F; A may be there and is not used.</param>
    /// <returns>The counts in the ranges.</returns>
    /// <exception cref="ArgumentNullException">The counts are missing.</exception>
    /// <exception cref="ArgumentException">A size is missing, or the counts rise with size.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite.</exception>
    public static DifferentialCounts FromCumulative(IReadOnlyDictionary<As4059Size, double> countsPer100Millilitres)
    {
        const string Name = nameof(countsPer100Millilitres);
        Guard.NotNull(countsPer100Millilitres, Name);
        var at = new double[5];
        for (var size = As4059Size.B; size <= As4059Size.F; size++)
        {
            at[size - As4059Size.B] = countsPer100Millilitres.TryGetValue(size, out var count)
                ? ClassLimits.Count(count, Name)
                : throw new ArgumentException($"{Name} has no size {size}; sizes B to F are required.", Name);
        }

        for (var i = 1; i < at.Length; i++)
        {
            if (at[i] > at[i - 1])
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"{Name} rises from {at[i - 1]:G7} to {at[i]:G7} per 100 mL at size {As4059Size.B + i}; cumulative counts cannot."
                    ),
                    Name
                );
            }
        }

        return new DifferentialCounts(at[0] - at[1], at[1] - at[2], at[2] - at[3], at[3] - at[4], at[4]);
    }

    /// <summary>Two sets of counts are equal when all five counts are.</summary>
    /// <param name="other">Other counts.</param>
    /// <returns>Whether they are equal.</returns>
    public bool Equals(DifferentialCounts? other) =>
        other is not null && Per100Millilitres.SequenceEqual(other.Per100Millilitres);

    /// <summary>A hash of the counts.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode() =>
        Per100Millilitres.Aggregate(17, (hash, count) => unchecked((hash * 31) + count.GetHashCode()));

    /// <summary>The class with the range that decides.</summary>
    /// <returns>For example <c>class 8, from size C</c>.</returns>
    public override string ToString() => $"class {Class}, from size {DecidingSize}";
}
