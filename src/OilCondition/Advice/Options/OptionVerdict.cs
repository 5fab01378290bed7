namespace OilCondition;

/// <summary>What comes of a way to treat an oil, best first.</summary>
public enum OptionVerdict
{
    /// <summary>It meets the target, as surely as asked and in time.</summary>
    Meets,

    /// <summary>It meets the target as surely as asked, but later than the risk allows.</summary>
    MeetsLate,

    /// <summary>It may meet the target, less surely than asked.</summary>
    NotSure,

    /// <summary>Nothing is done until the next outage.</summary>
    Waits,

    /// <summary>It does not meet the target: physics, or what it acts on.</summary>
    DoesNotReach,

    /// <summary>The store holds too little oil or too few elements.</summary>
    NotEnoughInStock,

    /// <summary>The machine must stand for it, and no known outage is long enough.</summary>
    OutageTooShort,

    /// <summary>It needs more power than the machine's place has.</summary>
    NotEnoughPower,

    /// <summary>It cannot be connected to this machine.</summary>
    CannotBeConnected,
}
