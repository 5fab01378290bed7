namespace OilCondition.Purification;

/// <summary>Whether the condensate collected and the balance of the oil tell the same.</summary>
public enum CondensateAgreement
{
    /// <summary>No condensate was measured.</summary>
    NotMeasured,

    /// <summary>The balance has no interval to compare with.</summary>
    NotDetermined,

    /// <summary>The two ranges overlap.</summary>
    Agrees,

    /// <summary>Less was collected than left the oil: vapour left with the exhaust, water was drained elsewhere, or the sensor saw only part of it.</summary>
    LessCollected,

    /// <summary>More was collected than left the oil: water came in, lay at the bottom, or came with humid sweep air.</summary>
    MoreCollected,
}
