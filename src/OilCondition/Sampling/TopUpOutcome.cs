namespace OilCondition;

/// <summary>Whether top-ups were corrected in a series, and why not.</summary>
internal enum TopUpOutcome
{
    /// <summary>Earlier readings were referred to the present charge.</summary>
    Corrected,

    /// <summary>There was no top-up in the span of the series.</summary>
    NoTopUp,

    /// <summary>The measurand does not blend by volume and add up over time (viscosity, RPVOT, counts ...); the readings stand.</summary>
    DoesNotAddUp,

    /// <summary>The new oil's value is not known; the readings stand.</summary>
    NewOilValueMissing,

    /// <summary>
    /// Top-ups between one reading and the next are recorded that leave less than a tenth of the oil: a wrong volume, or an oil change; the
    /// readings stand.
    /// </summary>
    RenewsCharge,
}
