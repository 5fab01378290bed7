namespace OilCondition.Cleanliness;

/// <summary>One size of a code beside its target.</summary>
public sealed record SizeComparison
{
    internal SizeComparison(ScaleNumber measured, ScaleNumber target)
    {
        Measured = measured;
        Target = target;
        HasExcess = measured.HasNumber && target.HasNumber;
        Excess = HasExcess ? measured.Number - target.Number : 0;
        Outcome = OutcomeOf(measured, target);
    }

    /// <summary>The number found.</summary>
    public ScaleNumber Measured { get; }

    /// <summary>The number to be reached.</summary>
    public ScaleNumber Target { get; }

    /// <summary>What the number says about its target.</summary>
    public TargetOutcome Outcome { get; }

    /// <summary>Whether both are numbers, so that there is an excess.</summary>
    public bool HasExcess { get; }

    /// <summary>Scale numbers above the target, negative below; 0 where there is none. For <c>&gt;28</c> at least this many.</summary>
    public int Excess { get; }

    private static TargetOutcome OutcomeOf(ScaleNumber measured, ScaleNumber target)
    {
        if (target.Kind == ScaleNumberKind.NotCounted)
        {
            return TargetOutcome.NotRequired;
        }

        if (!target.HasNumber || measured.Kind == ScaleNumberKind.NotCounted)
        {
            return TargetOutcome.NotDetermined;
        }

        if (measured.Kind == ScaleNumberKind.TooNumerous || measured.Number > target.Number)
        {
            return TargetOutcome.Exceeded;
        }

        return measured.Kind == ScaleNumberKind.FewCounted ? TargetOutcome.MetOnFewCounted : TargetOutcome.Met;
    }
}
