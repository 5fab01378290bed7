namespace OilCondition.Cleanliness;

/// <summary>A cleanliness code beside a target, size by size.</summary>
public sealed record CodeComparison
{
    internal CodeComparison(CleanlinessCode code, CleanlinessCode target)
    {
        At4 = new SizeComparison(code.At4, target.At4);
        At6 = new SizeComparison(code.At6, target.At6);
        At14 = new SizeComparison(code.At14, target.At14);
        SizeComparison[] sizes = [At4, At6, At14];

        // The enumeration runs from the best to the worst outcome; one exceeded size is enough, one open size leaves the rest open.
        Outcome = sizes.Max(size => size.Outcome);
        HasWorstExcess = sizes.Any(size => size.HasExcess);
        WorstExcess = sizes.Where(size => size.HasExcess).Select(size => size.Excess).DefaultIfEmpty(0).Max();
    }

    /// <summary>At 4 µm(c).</summary>
    public SizeComparison At4 { get; }

    /// <summary>At 6 µm(c), or 5 µm by microscope.</summary>
    public SizeComparison At6 { get; }

    /// <summary>At 14 µm(c), or 15 µm by microscope.</summary>
    public SizeComparison At14 { get; }

    /// <summary>The worst outcome of the three sizes.</summary>
    public TargetOutcome Outcome { get; }

    /// <summary>Whether any size has numbers on both sides.</summary>
    public bool HasWorstExcess { get; }

    /// <summary>
    /// The largest excess over the sizes that have numbers on both sides; 0 where none has. A size that is too numerous to count has no
    /// number: read it with <see cref="Outcome"/>.
    /// </summary>
    public int WorstExcess { get; }
}
