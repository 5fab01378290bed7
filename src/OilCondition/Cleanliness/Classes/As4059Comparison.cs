namespace OilCondition.Cleanliness;

/// <summary>A code after AS4059 beside a target.</summary>
/// <remarks>
/// A span such as <c>7B-D</c> tells the worst of its sizes, not which. Beside a target that it passes its sizes stay open; the outcome is still
/// 'exceeded' when the target asks less than that class at every size of the span.
/// </remarks>
internal sealed class As4059Comparison
{
    internal As4059Comparison(As4059Code code, As4059Code target)
    {
        if (target.Parts.FirstOrDefault(part => part.Class.IsAboveTable) is { } open)
        {
            throw new ArgumentException(
                $"target is {target}; {open} limits nothing. Allowed: classes 000 to 12.",
                nameof(target)
            );
        }

        List<As4059Size> exceeded = [];
        List<As4059Size> notDetermined = [];
        foreach (var part in target.Parts)
        {
            foreach (var size in part.Sizes)
            {
                var measured = code.PartAt(size);
                if (measured is null || (measured.Class.Rank > part.Class.Rank && measured.IsSpan))
                {
                    notDetermined.Add(size);
                }
                else if (measured.Class.Rank > part.Class.Rank)
                {
                    exceeded.Add(size);
                }
            }
        }

        ExceededSizes = exceeded;
        UndeterminedSizes = notDetermined;
        var spanExceeds = code.Parts.Any(part =>
            part.IsSpan
            && part.Sizes.All(size => target.PartAt(size) is { } asked && asked.Class.Rank < part.Class.Rank)
        );
        Outcome =
            exceeded.Count > 0 || spanExceeds ? TargetOutcome.Exceeded
            : notDetermined.Count > 0 ? TargetOutcome.NotDetermined
            : TargetOutcome.Met;
    }

    /// <summary>Met, exceeded or not determined.</summary>
    public TargetOutcome Outcome { get; }

    /// <summary>Sizes whose own class is above the target's.</summary>
    public IReadOnlyList<As4059Size> ExceededSizes { get; }

    /// <summary>Sizes that the target asks for and the code does not tell.</summary>
    public IReadOnlyList<As4059Size> UndeterminedSizes { get; }
}
