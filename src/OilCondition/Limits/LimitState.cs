namespace OilCondition.Limits;

/// <summary>Where a reading stands against a limit. The words alert and alarm are those of ISO 13372.</summary>
public enum LimitState
{
    /// <summary>Nothing can be said: no reading, no new-oil value, or a reading that is only bounded.</summary>
    NotDetermined,

    /// <summary>Within the limits.</summary>
    Normal,

    /// <summary>The first zone beyond: raised attention.</summary>
    Alert,

    /// <summary>The second zone beyond: corrective action.</summary>
    Alarm,
}
