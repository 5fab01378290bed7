using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>The filtration ratio that a target requires at a given flow.</summary>
public sealed record RequiredBeta
{
    internal RequiredBeta(RequirementOutcome outcome, double beta, VolumeFlow cleanedFlow)
    {
        Outcome = outcome;
        Beta = beta;
        CleanedFlow = cleanedFlow;
    }

    /// <summary>Whether there is such a filter.</summary>
    public RequirementOutcome Outcome { get; }

    /// <summary>The least ratio; 1 (nothing held back) where none is needed, 10⁷, the end of the range, where none is enough.</summary>
    public double Beta { get; }

    /// <summary>The flow that a filter which holds back everything would need, Q·e; the flow must be above it.</summary>
    public VolumeFlow CleanedFlow { get; }
}
