namespace OilCondition.Water;

/// <summary>What is known about the temperature at which dissolved water begins to separate on cooling.</summary>
public enum SeparationOutcome
{
    /// <summary>Water separates below the stated temperature.</summary>
    SeparatesBelow,

    /// <summary>The water stays dissolved down to the stated temperature, the lowest that the library answers for.</summary>
    StaysDissolved,

    /// <summary>Free water is present even at the stated temperature, the highest that the library answers for.</summary>
    StaysFree,
}
