using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Cumulative counts of one sample at several sizes, and what they say of the sizes between.</summary>
/// <remarks>
/// <para>
/// ln n is a straight line in ln d between two neighbouring sizes: n(d) = n₁·(d/d₁)^(−s), s = ln(n₁/n₂)/ln(d₂/d₁). n: particles of size d and above, per
/// mL; d: size, all in one unit, µm(c), µm(b) or µm (ACFTD). Field samples have s of about 2 to 3.5 between 4 and 14 µm(c).
/// </para>
/// <para>
/// Nothing is said below the smallest and above the largest size. A size at which nothing was counted has no logarithm: leave it out; the sizes
/// above the last that counted something are then refused, as they should be.
/// </para>
/// <para>Source: common practice, no source.</para>
/// </remarks>
/// <example><code>new SizeDistribution([4, 6], [2000, 500]).PerMillilitreAt(5); // 933</code></example>
public sealed class SizeDistribution
{
    private readonly double[] sizes;
    private readonly double[] counts;

    /// <summary>Counts of one sample.</summary>
    /// <param name="sizesMicrometres">Two sizes or more, rising, 0.1 to 1000 µm.</param>
    /// <param name="countsPerMillilitre">Particles of each size and above per mL, as many, above 0 and not rising with size.</param>
    /// <exception cref="ArgumentException">The columns differ in length, there are fewer than two sizes, sizes do not rise or counts do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size or count lies outside its range.</exception>
    public SizeDistribution(ReadOnlySpan<double> sizesMicrometres, ReadOnlySpan<double> countsPerMillilitre)
    {
        Guard.SameLength(
            countsPerMillilitre.Length,
            sizesMicrometres.Length,
            nameof(countsPerMillilitre),
            nameof(sizesMicrometres)
        );
        if (sizesMicrometres.Length < 2)
        {
            throw new ArgumentException(
                $"sizesMicrometres has {sizesMicrometres.Length} values; at least 2 are required.",
                nameof(sizesMicrometres)
            );
        }

        sizes = sizesMicrometres.ToArray();
        counts = countsPerMillilitre.ToArray();
        for (var i = 0; i < sizes.Length; i++)
        {
            Guard.InRange(sizes[i], 0.1, 1000, "µm", nameof(sizesMicrometres));
            Guard.Positive(counts[i], "per mL", nameof(countsPerMillilitre));
            if (i > 0 && !(sizes[i] > sizes[i - 1] && counts[i] <= counts[i - 1]))
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"{counts[i - 1]:G7} per mL at {sizes[i - 1]:G7} µm is followed by {counts[i]:G7} per mL at {sizes[i]:G7} µm; allowed: rising sizes, cumulative counts that do not rise."
                    ),
                    nameof(countsPerMillilitre)
                );
            }
        }
    }

    /// <summary>The smallest size, µm.</summary>
    public double SmallestMicrometres => sizes[0];

    /// <summary>The largest size, µm.</summary>
    public double LargestMicrometres => sizes[sizes.Length - 1];

    /// <summary>The count at a size between.</summary>
    /// <param name="micrometres">A size from <see cref="SmallestMicrometres"/> to <see cref="LargestMicrometres"/>.</param>
    /// <returns>Particles of that size and above per mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside those counted; no count is made up there.</exception>
    public double PerMillilitreAt(double micrometres)
    {
        Guard.InRange(micrometres, SmallestMicrometres, LargestMicrometres, "µm");
        var index = Array.BinarySearch(sizes, micrometres);
        if (index >= 0)
        {
            return counts[index];
        }

        var above = ~index;
        var share = Math.Log(micrometres / sizes[above - 1]) / Math.Log(sizes[above] / sizes[above - 1]);
        return counts[above - 1] * Math.Pow(counts[above] / counts[above - 1], share);
    }

    /// <summary>The counts, size by size.</summary>
    /// <returns>For example <c>2000 from 4 µm, 500 from 6 µm, per mL</c>.</returns>
    public override string ToString() =>
        string.Join(", ", sizes.Select((size, i) => $"{PlainText.Number(counts[i])} from {PlainText.Number(size)} µm"))
        + ", per mL";
}
