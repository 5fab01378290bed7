namespace OilCondition.Cleanup;

/// <summary>How an observed figure stands to the planned one.</summary>
public enum PlanAgreement
{
    /// <summary>The readings do not bound the figure well enough to say, or it was stated beforehand.</summary>
    NotDetermined,

    /// <summary>The interval holds the planned figure within its tolerance, and lies within 0 and twice its scale.</summary>
    Agrees,

    /// <summary>The whole interval is better than planned by more than the tolerance: more removal, less ingress, a lower level.</summary>
    Better,

    /// <summary>The whole interval is worse than planned by more than the tolerance.</summary>
    Worse,
}
