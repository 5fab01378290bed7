using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Cleanliness classes after AS4059 from particle counts per 100 mL.</summary>
/// <remarks>
/// <para>
/// Cumulative (table 2): a count at and above a size belongs to the cleanest class whose limit it does not pass; limits are included. Above class 12
/// the result is <c>&gt;12</c>. Where classes share a limit, as at the largest sizes, the cleanest of them is given.
/// </para>
/// <para>Differential (table 1): five ranges with the limits of NAS 1638; the class is the worst of the ranges.</para>
/// <para>
/// Source: AS4059 rev. E, tables 1 and 2 (seen in secondary reproductions; for every class the running sums of table 1 are the exact table 2). Later
/// revisions are believed to keep the figures (from memory).
/// </para>
/// </remarks>
/// <example>
/// <code>
/// As4059.ClassOf(As4059Size.B, 19480, As4059Printing.Exact).ToString();    // 7
/// As4059.ClassOf(As4059Size.B, 19480, As4059Printing.Rounded).ToString();  // 6
/// </code>
/// </example>
public static class As4059
{
    /// <summary>Where the cumulative table comes from.</summary>
    public static Source CumulativeSource { get; } =
        new(SourceKind.Standard, "SAE AS4059 rev. E, seen in secondary reproductions", "Table 2");

    /// <summary>Where the differential table comes from.</summary>
    public static Source DifferentialSource { get; } =
        new(SourceKind.Standard, "SAE AS4059 rev. E, seen in secondary reproductions", "Table 1");

    /// <summary>The class of a count at one size.</summary>
    /// <param name="size">The size.</param>
    /// <param name="countPer100Millilitres">Particles of that size and above per 100 mL, 0 or more.</param>
    /// <param name="printing">The printing of the table.</param>
    /// <returns>000 to 12, or above the table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative or not finite, or the size or printing is not one of the named.</exception>
    public static CleanlinessClass ClassOf(As4059Size size, double countPer100Millilitres, As4059Printing printing) =>
        Table(printing)
            .ClassOf(Column(size), ClassLimits.Count(countPer100Millilitres, nameof(countPer100Millilitres)));

    /// <summary>The class of what a counter counted at one size.</summary>
    /// <remarks>The standard's table has no mark for few particles; see <see cref="ParticleCount.Interval"/> for what a small count is worth.</remarks>
    /// <param name="size">The size.</param>
    /// <param name="count">The count at that size and above.</param>
    /// <param name="printing">The printing of the table.</param>
    /// <returns>000 to 12, or above the table.</returns>
    /// <exception cref="ArgumentNullException">The count is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The size or printing is not one of the named.</exception>
    public static CleanlinessClass ClassOf(As4059Size size, ParticleCount count, As4059Printing printing) =>
        ClassOf(size, Guard.NotNull(count).Per100Millilitres, printing);

    /// <summary>The classes of counts size by size, written <c>7B/6C/5D</c>.</summary>
    /// <param name="countsPer100Millilitres">Cumulative counts per 100 mL at one size or more.</param>
    /// <param name="printing">The printing of the table.</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentException">There is no count, or the counts rise with size.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite, or a size or the printing is not one of the named.</exception>
    public static As4059Code CodeOf(
        IReadOnlyDictionary<As4059Size, double> countsPer100Millilitres,
        As4059Printing printing
    ) =>
        new(
            InOrder(countsPer100Millilitres)
                .Select(pair => new As4059Part(ClassOf(pair.Key, pair.Value, printing), pair.Key, pair.Key))
        );

    /// <summary>The worst class over a span of neighbouring sizes, written <c>6B-F</c>.</summary>
    /// <param name="countsPer100Millilitres">Cumulative counts per 100 mL at neighbouring sizes.</param>
    /// <param name="printing">The printing of the table.</param>
    /// <returns>A code of one part.</returns>
    /// <exception cref="ArgumentException">There is no count, a size between is missing, or the counts rise with size.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite, or a size or the printing is not one of the named.</exception>
    public static As4059Code SpanOf(
        IReadOnlyDictionary<As4059Size, double> countsPer100Millilitres,
        As4059Printing printing
    )
    {
        var counts = InOrder(countsPer100Millilitres);
        var (first, last) = (counts[0].Key, counts[counts.Count - 1].Key);
        if (last - first + 1 != counts.Count)
        {
            throw new ArgumentException(
                $"{nameof(countsPer100Millilitres)} has sizes {string.Join(", ", counts.Select(pair => pair.Key))}; allowed: neighbouring sizes without a gap.",
                nameof(countsPer100Millilitres)
            );
        }

        var worst = counts
            .Select(pair => ClassOf(pair.Key, pair.Value, printing))
            .Aggregate((a, b) => a.Rank >= b.Rank ? a : b);
        return new As4059Code([new As4059Part(worst, first, last)]);
    }

    /// <summary>The most particles that still belong to a class at one size.</summary>
    /// <param name="size">The size.</param>
    /// <param name="cleanlinessClass">000 to 12.</param>
    /// <param name="printing">The printing of the table.</param>
    /// <returns>Particles per 100 mL, inclusive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The class is above the table, or the size or printing is not one of the named.</exception>
    public static int UpperLimitPer100Millilitres(
        As4059Size size,
        CleanlinessClass cleanlinessClass,
        As4059Printing printing
    ) => Table(printing).UpperLimit(Column(size), cleanlinessClass, nameof(cleanlinessClass));

    /// <summary>The differential class, of the ranges 6-14, 14-21, 21-38, 38-70 and above 70 µm(c).</summary>
    /// <param name="counts">The counts in the five ranges.</param>
    /// <returns>The class of each range and the worst, 00 to 12 or above the table.</returns>
    /// <exception cref="ArgumentNullException">The counts are missing.</exception>
    public static DifferentialClass DifferentialClassOf(DifferentialCounts counts) => new(Guard.NotNull(counts));

    internal static ClassLimits Table(As4059Printing printing) =>
        printing is As4059Printing.Exact or As4059Printing.Rounded
            ? ClassTables.Cumulative(printing)
            : throw new ArgumentOutOfRangeException(
                nameof(printing),
                $"printing is {printing}; allowed: Exact, Rounded."
            );

    internal static int Column(As4059Size size) =>
        size is >= As4059Size.A and <= As4059Size.F
            ? (int)size
            : throw new ArgumentOutOfRangeException(nameof(size), $"size is {size}; allowed: A to F.");

    private static List<KeyValuePair<As4059Size, double>> InOrder(
        IReadOnlyDictionary<As4059Size, double> countsPer100Millilitres
    )
    {
        const string Name = nameof(countsPer100Millilitres);
        var counts = Guard.NotNull(countsPer100Millilitres, Name).OrderBy(pair => pair.Key).ToList();
        if (counts.Count == 0)
        {
            throw new ArgumentException($"{Name} is empty; at least one size is required.", Name);
        }

        for (var i = 1; i < counts.Count; i++)
        {
            if (counts[i].Value > counts[i - 1].Value)
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"{Name} is {counts[i - 1].Value:G7} per 100 mL at size {counts[i - 1].Key} and {counts[i].Value:G7} at {counts[i].Key}; cumulative counts cannot rise with size."
                    ),
                    Name
                );
            }
        }

        return counts;
    }
}
