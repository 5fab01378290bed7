namespace OilCondition.Cleanliness;

/// <summary>Whether a kidney loop brings a tank down to a count.</summary>
public enum KidneyLoopOutcome
{
    /// <summary>The steady state is not below the target: more flow, a better filter or less ingression is needed.</summary>
    Never,

    /// <summary>The count is at or below the target at the start.</summary>
    AlreadyThere,

    /// <summary>The target is reached after the time.</summary>
    Reached,
}
