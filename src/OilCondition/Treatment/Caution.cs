namespace OilCondition.Treatment;

/// <summary>What can hurt someone. The sentences are made in the Advice room.</summary>
public enum Caution
{
    /// <summary>Hot oil and hot surfaces.</summary>
    HotOil,

    /// <summary>Vacuum vessels and hoses.</summary>
    Vacuum,

    /// <summary>Vapour, flash point and ignition.</summary>
    FlashPoint,

    /// <summary>Electrical isolation and earthing.</summary>
    ElectricalIsolation,

    /// <summary>Oil under pressure and stored energy.</summary>
    PressurisedOil,

    /// <summary>Spills, slipping and waste oil.</summary>
    SpillsAndWaste,

    /// <summary>Limits of the machine's, the oil's and the seals' makers.</summary>
    MakersLimits,

    /// <summary>Local codes, permits and licensed practice.</summary>
    LocalCodes,
}
