using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Cleanliness classes after AS4059 from particle counts per 100 mL.</summary>
/// <remarks>
/// <para>
/// Cumulative (table 2): a count at and above a size belongs to the cleanest class whose limit it does not pass; limits are included. Above class 12
/// the result is <c>&gt;12</c>. Where classes share a limit, as at the largest sizes, the cleanest of them is given.
/// </para>
/// <para>
/// Two printings of the table are in use and disagree for counts between their limits: 19 480 particles per 100 mL at size B are class 7 by the exact
/// table (limit of class 6: 19 462) and class 6 by the rounded one (19 500). State with a class which was used.
/// </para>
/// <para>Differential (table 1): <see cref="DifferentialCounts"/>.</para>
/// <para>
/// Source: AS4059 rev. E, tables 1 and 2 (seen in secondary reproductions; for every class the running sums of table 1 are the exact table 2). Later
/// revisions are believed to keep the figures (from memory).
/// </para>
/// </remarks>
/// <example>
/// <code>
/// As4059.Exact.ClassOf(As4059Size.B, 19480);    // 7
/// As4059.Rounded.ClassOf(As4059Size.B, 19480);  // 6
/// </code>
/// </example>
public sealed class As4059
{
    private readonly string name;

    private As4059(string name, ClassLimits limits)
    {
        this.name = name;
        Limits = limits;
    }

    /// <summary>The table as printed in whole numbers, each the running sum of the differential limits.</summary>
    public static As4059 Exact { get; } = new("AS4059, exact limits", ClassTables.CumulativeExact);

    /// <summary>The table as printed with three figures.</summary>
    public static As4059 Rounded { get; } = new("AS4059, rounded limits", ClassTables.CumulativeRounded);

    /// <summary>Where the cumulative table comes from.</summary>
    public static Source Source { get; } =
        new(SourceKind.Standard, "SAE AS4059 rev. E, seen in secondary reproductions", "Table 2");

    internal ClassLimits Limits { get; }

    /// <summary>The class of a count at one size.</summary>
    /// <param name="size">The size.</param>
    /// <param name="countPer100Millilitres">Particles of that size and above per 100 mL, 0 or more.</param>
    /// <returns>000 to 12, or above the table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative or not finite, or the size is not one of the named.</exception>
    public CleanlinessClass ClassOf(As4059Size size, double countPer100Millilitres) =>
        Limits.ClassOf(Column(size), ClassLimits.Count(countPer100Millilitres, nameof(countPer100Millilitres)));

    /// <summary>The class of what a counter counted at one size.</summary>
    /// <remarks>The standard's table has no mark for few particles; see <see cref="ParticleCount.Interval(double)"/> for what a small count is worth.</remarks>
    /// <param name="size">The size.</param>
    /// <param name="count">The count at that size and above.</param>
    /// <returns>000 to 12, or above the table.</returns>
    /// <exception cref="ArgumentNullException">The count is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The size is not one of the named.</exception>
    public CleanlinessClass ClassOf(As4059Size size, ParticleCount count) =>
        ClassOf(size, Guard.NotNull(count).Per100Millilitres);

    /// <summary>The classes of counts size by size, written <c>7B/6C/5D</c>.</summary>
    /// <param name="countsPer100Millilitres">Cumulative counts per 100 mL at one size or more.</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentException">There is no count, or the counts rise with size.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite, or a size is not one of the named.</exception>
    public As4059Code CodeOf(IReadOnlyDictionary<As4059Size, double> countsPer100Millilitres) =>
        new(
            InOrder(countsPer100Millilitres)
                .Select(pair => new As4059Part(ClassOf(pair.Key, pair.Value), pair.Key, pair.Key))
        );

    /// <summary>The worst class over a span of neighbouring sizes, written <c>6B-F</c>.</summary>
    /// <param name="countsPer100Millilitres">Cumulative counts per 100 mL at neighbouring sizes.</param>
    /// <returns>A code of one part.</returns>
    /// <exception cref="ArgumentException">There is no count, a size between is missing, or the counts rise with size.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite, or a size is not one of the named.</exception>
    public As4059Code SpanOf(IReadOnlyDictionary<As4059Size, double> countsPer100Millilitres)
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

        var worst = counts.Select(pair => ClassOf(pair.Key, pair.Value)).Aggregate((a, b) => a.Rank >= b.Rank ? a : b);
        return new As4059Code([new As4059Part(worst, first, last)]);
    }

    /// <summary>The most particles that still belong to a class at one size.</summary>
    /// <param name="size">The size.</param>
    /// <param name="cleanlinessClass">000 to 12.</param>
    /// <returns>Particles per 100 mL, inclusive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The class is above the table, or the size is not one of the named.</exception>
    public int UpperLimitPer100Millilitres(As4059Size size, CleanlinessClass cleanlinessClass) =>
        Limits.UpperLimit(Column(size), cleanlinessClass, nameof(cleanlinessClass));

    /// <summary>Which table it is.</summary>
    /// <returns>For example <c>AS4059, exact limits</c>.</returns>
    public override string ToString() => name;

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
