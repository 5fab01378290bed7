namespace OilCondition;

/// <summary>How much a finding asks for. Alert and alarm are the words of ISO 13372.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing is asked for beyond the recommendation beside it.</summary>
    Information,

    /// <summary>Raised attention.</summary>
    Alert,

    /// <summary>Corrective action.</summary>
    Alarm,
}
