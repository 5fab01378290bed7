namespace OilCondition.Cleanup;

/// <summary>A figure of the run beside the same figure of the plan.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public sealed class ComparedFigure<T>
    where T : struct
{
    internal ComparedFigure(CleanupFigure<T> observed, T planned, PlanAgreement agreement)
    {
        Observed = observed;
        Planned = planned;
        Agreement = agreement;
    }

    /// <summary>As the readings tell it, with its interval.</summary>
    public CleanupFigure<T> Observed { get; }

    /// <summary>As planned.</summary>
    public T Planned { get; }

    /// <summary>How the two stand to each other.</summary>
    public PlanAgreement Agreement { get; }
}
