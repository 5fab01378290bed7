namespace OilCondition.Viscosity;

/// <summary>Whether the viscosity of an oil shows that something else is in it.</summary>
public enum DilutionOutcome
{
    /// <summary>The interval of the share lies above 0.</summary>
    Detected,

    /// <summary>The interval of the share reaches 0: the change is within the uncertainty of the viscosities.</summary>
    NotDistinguishable,

    /// <summary>The viscosity moved away from that of the diluent by more than its uncertainty: this diluent does not explain it.</summary>
    MovedAway,

    /// <summary>The viscosity lies beyond that of the diluent by more than its uncertainty: this diluent does not explain it.</summary>
    BeyondDiluent,
}
