namespace OilCondition.Cleanup;

/// <summary>Whether the condensate collected and the balance of the water tell the same; <see cref="CleanupRecord.CondensateReasons"/> has what can lie behind a difference.</summary>
public enum CondensateAgreement
{
    /// <summary>No condensate was measured.</summary>
    NotMeasured,

    /// <summary>The balance has no interval to compare with.</summary>
    NotDetermined,

    /// <summary>The two ranges overlap.</summary>
    Agrees,

    /// <summary>Less was collected than was drawn off.</summary>
    LessCollected,

    /// <summary>More was collected than was drawn off.</summary>
    MoreCollected,
}
