using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <content>The code beside a target, size by size.</content>
public sealed partial record CleanlinessCode
{
    private static readonly CodeSize[] AllSizes = [CodeSize.At4, CodeSize.At6, CodeSize.At14];

    /// <summary>The number at a size.</summary>
    /// <param name="size">The size.</param>
    /// <returns>The number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size is not one of the named.</exception>
    public ScaleNumber At(CodeSize size) =>
        size switch
        {
            CodeSize.At4 => At4,
            CodeSize.At6 => At6,
            CodeSize.At14 => At14,
            _ => throw new ArgumentOutOfRangeException(nameof(size), $"size is {size}; allowed: At4, At6, At14."),
        };

    /// <summary>This code beside a target: the worst outcome of the three sizes.</summary>
    /// <param name="target">The target code; <c>-</c> where it asks nothing.</param>
    /// <returns>One exceeded size is enough; a size left open leaves the rest open.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    public TargetOutcome Compare(CleanlinessCode target)
    {
        Guard.NotNull(target);

        // The enumeration runs from the best to the worst outcome.
        return AllSizes.Max(size => Compare(target, size));
    }

    /// <summary>One size of this code beside a target.</summary>
    /// <param name="target">The target code; <c>-</c> where it asks nothing.</param>
    /// <param name="size">The size.</param>
    /// <returns>What the number says about its target.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    public TargetOutcome Compare(CleanlinessCode target, CodeSize size)
    {
        var asked = Guard.NotNull(target).At(size);
        var measured = At(size);
        return asked.Kind == ScaleNumberKind.NotCounted ? TargetOutcome.NotRequired
            : !asked.HasNumber || measured.Kind == ScaleNumberKind.NotCounted ? TargetOutcome.NotDetermined
            : measured.Kind == ScaleNumberKind.TooNumerous || measured.Number > asked.Number ? TargetOutcome.Exceeded
            : measured.IsFewCounted ? TargetOutcome.MetOnFewCounted
            : TargetOutcome.Met;
    }

    /// <summary>How many scale numbers one size lies above its target.</summary>
    /// <param name="target">The target code.</param>
    /// <param name="size">The size.</param>
    /// <param name="excess">Numbers above the target, negative below; for <c>&gt;28</c> at least this many.</param>
    /// <returns>False where either side has no number.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    public bool TryExcess(CleanlinessCode target, CodeSize size, out int excess)
    {
        var asked = Guard.NotNull(target).At(size);
        var measured = At(size);
        var isKnown = measured.HasNumber && asked.HasNumber;
        excess = isKnown ? measured.Number - asked.Number : 0;
        return isKnown;
    }

    /// <summary>How many scale numbers the worst size lies above its target; 0 or less when the target is met.</summary>
    /// <param name="target">The target code.</param>
    /// <param name="excess">The largest excess over the sizes that the target asks for.</param>
    /// <returns>
    /// False where a size that the target asks for has no excess in numbers (<see cref="UnjudgedSizes"/>): whatever the others say, it may be worse.
    /// </returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    public bool TryWorstExcess(CleanlinessCode target, out int excess)
    {
        List<int> known = [];
        foreach (var size in AllSizes)
        {
            if (TryExcess(target, size, out var one))
            {
                known.Add(one);
            }
        }

        var isKnown = UnjudgedSizes(target).Count == 0;
        excess = isKnown ? known.DefaultIfEmpty(0).Max() : 0;
        return isKnown;
    }

    /// <summary>
    /// The sizes that a target asks for and that have no excess in numbers: not counted, or too numerous to count. A size that is too numerous exceeds
    /// its target all the same; by how much nobody knows.
    /// </summary>
    /// <param name="target">The target code.</param>
    /// <returns>The sizes, the smallest first.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    public IReadOnlyList<CodeSize> UnjudgedSizes(CleanlinessCode target) =>
        [
            .. AllSizes.Where(size =>
                Compare(target, size) != TargetOutcome.NotRequired && !TryExcess(target, size, out _)
            ),
        ];
}
