using OilCondition.Treatment;

namespace OilCondition;

/// <summary>Something to do, why, how much, and what to beware of.</summary>
public sealed class Recommendation
{
    internal Recommendation(
        RecommendedAction action,
        Severity severity,
        IReadOnlyList<Problem> problems,
        IReadOnlyList<Finding> reasons,
        IReadOnlyList<EvidenceItem> quantities,
        IReadOnlyList<Caution> cautions
    )
    {
        Action = action;
        Severity = severity;
        Problems = problems;
        Reasons = reasons;
        Quantities = quantities;
        Cautions = cautions;
    }

    /// <summary>What to do.</summary>
    public RecommendedAction Action { get; }

    /// <summary>Severity of the gravest reason; recommendations are ranked by it.</summary>
    public Severity Severity { get; }

    /// <summary>The problems that ask for it, gravest first; at least one.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>The findings of these problems that ask for it.</summary>
    public IReadOnlyList<Finding> Reasons { get; }

    /// <summary>How much, by when.</summary>
    public IReadOnlyList<EvidenceItem> Quantities { get; }

    /// <summary>What to beware of.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>The topics that ask for it, and the recommendation as a sentence.</summary>
    /// <returns>For example <c>Oil ageing: Plan the oil change. (oil fill 1000 L)</c>.</returns>
    public override string ToString() => $"{Sentences.English.Topics(this)}: {Sentences.English.Of(this)}";
}
