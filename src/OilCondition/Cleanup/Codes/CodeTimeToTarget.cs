using OilCondition.Cleanliness;

namespace OilCondition.Cleanup;

/// <summary>When fitted counts reach a target code: all sizes together, each for itself, and which one rules.</summary>
public sealed class CodeTimeToTarget
{
    private readonly IReadOnlyDictionary<CodeSize, TimeToTarget> sizes;

    internal CodeTimeToTarget(
        CleanlinessCode target,
        IReadOnlyDictionary<CodeSize, TimeToTarget> sizes,
        CodeSize rulingSize,
        TimeToTarget whole
    )
    {
        Target = target;
        this.sizes = sizes;
        RulingSize = rulingSize;
        Whole = whole;
    }

    /// <summary>The target code.</summary>
    public CleanlinessCode Target { get; }

    /// <summary>
    /// When the last size gets there. The late end is that of the latest size, which holds as often as stated; the early end is that of the
    /// latest size too, each taken at its share of the doubt, so that it holds at least as often as stated.
    /// </summary>
    public TimeToTarget Whole { get; }

    /// <summary>The size that decides: out of reach, without enough readings, not demonstrated, or the last by the best curves.</summary>
    public CodeSize RulingSize { get; }

    /// <summary>The sizes that the target asks for.</summary>
    public IEnumerable<CodeSize> Sizes => sizes.Keys.OrderBy(size => size);

    /// <summary>When one size gets to its scale number.</summary>
    /// <param name="size">The size.</param>
    /// <param name="timeToTarget">Its case, or null.</param>
    /// <returns>Whether the target asks for that size.</returns>
    public bool TryOf(CodeSize size, out TimeToTarget? timeToTarget) => sizes.TryGetValue(size, out timeToTarget);
}
