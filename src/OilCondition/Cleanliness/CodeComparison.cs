namespace OilCondition.Cleanliness;

/// <summary>A cleanliness code beside a target, size by size.</summary>
public sealed class CodeComparison
{
    private readonly int largestExcess;

    internal CodeComparison(CleanlinessCode code, CleanlinessCode target)
    {
        At4 = new SizeComparison(code.At4, target.At4);
        At6 = new SizeComparison(code.At6, target.At6);
        At14 = new SizeComparison(code.At14, target.At14);
        SizeComparison[] sizes = [At4, At6, At14];

        // The enumeration runs from the best to the worst outcome; one exceeded size is enough, one open size leaves the rest open.
        Outcome = sizes.Max(size => size.Outcome);
        UnjudgedSizes =
        [
            .. Enumerable
                .Range(0, sizes.Length)
                .Where(i => !sizes[i].HasExcess && sizes[i].Outcome != TargetOutcome.NotRequired)
                .Select(i => (CodeSize)i),
        ];
        largestExcess = sizes.Where(size => size.HasExcess).Select(size => size.Excess).DefaultIfEmpty(0).Max();
    }

    /// <summary>At 4 µm(c).</summary>
    public SizeComparison At4 { get; }

    /// <summary>At 6 µm(c), or 5 µm by microscope.</summary>
    public SizeComparison At6 { get; }

    /// <summary>At 14 µm(c), or 15 µm by microscope.</summary>
    public SizeComparison At14 { get; }

    /// <summary>The worst outcome of the three sizes.</summary>
    public TargetOutcome Outcome { get; }

    /// <summary>
    /// The sizes that the target asks for and that have no excess in numbers: not counted, or too numerous to count. A size that is too numerous
    /// exceeds its target all the same, see <see cref="Outcome"/>; by how much nobody knows.
    /// </summary>
    public IReadOnlyList<CodeSize> UnjudgedSizes { get; }

    /// <summary>Whether every size that the target asks for has an excess in numbers.</summary>
    public bool HasWorstExcess => UnjudgedSizes.Count == 0;

    /// <summary>The largest excess over the sizes that the target asks for; 0 or less when the target is met.</summary>
    /// <exception cref="InvalidOperationException">
    /// A size has no excess (<see cref="UnjudgedSizes"/>): whatever the others say, it may be worse. Their own figures stand at
    /// <see cref="At4"/>, <see cref="At6"/> and <see cref="At14"/>.
    /// </exception>
    public int WorstExcess =>
        HasWorstExcess
            ? largestExcess
            : throw new InvalidOperationException(
                $"No excess in numbers at {string.Join(", ", UnjudgedSizes)}; the worst excess is not known. Read Outcome and the sizes."
            );
}
