namespace OilCondition.Cleanliness;

/// <summary>Whether there is a flow or a filter that brings a tank to a target.</summary>
public enum RequirementOutcome
{
    /// <summary>Nothing is required: the tank is at or below the target and nothing comes in.</summary>
    NotNeeded,

    /// <summary>The figure stated is required.</summary>
    Found,

    /// <summary>No flow or filter within the allowed range is enough. The figure stated is the end of the range.</summary>
    OutOfReach,
}
