using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>The flow through a filter that a target requires.</summary>
public sealed record RequiredFlow
{
    internal RequiredFlow(RequirementOutcome outcome, VolumeFlow flow)
    {
        Outcome = outcome;
        Flow = flow;
    }

    /// <summary>Whether there is such a flow.</summary>
    public RequirementOutcome Outcome { get; }

    /// <summary>The least flow; 0 where none is needed, 10⁹ mL/min, the end of the range, where none is enough.</summary>
    public VolumeFlow Flow { get; }
}
