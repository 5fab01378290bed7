namespace OilCondition.Cleanliness;

/// <summary>What a scale number says about its target, from the best to the worst.</summary>
public enum TargetOutcome
{
    /// <summary>The target asks nothing at this size.</summary>
    NotRequired,

    /// <summary>At or below the target.</summary>
    Met,

    /// <summary>At or below the target, but on fewer than 20 counted particles: the true number may be higher.</summary>
    MetOnFewCounted,

    /// <summary>The size was not counted, or was too numerous for a target that is itself too numerous to count.</summary>
    NotDetermined,

    /// <summary>Above the target.</summary>
    Exceeded,
}
