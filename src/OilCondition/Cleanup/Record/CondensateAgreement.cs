namespace OilCondition.Cleanup;

/// <summary>Whether the condensate collected and the balance of the water tell the same; the record prints what can lie behind a difference.</summary>
internal enum CondensateAgreement
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
