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

    /// <summary>Oil that foams over under vacuum and leaves with the vacuum pump.</summary>
    FoamOver,

    /// <summary>Light ends and additives that hot oil loses under a deep vacuum.</summary>
    LightEndsLost,

    /// <summary>Oil that cokes on the film of a heater.</summary>
    CokingOnHeater,

    /// <summary>Free water that is drained before the oil is heated or filtered.</summary>
    DrainWaterFirst,

    /// <summary>Pumps, couplings and bowls that turn.</summary>
    MovingMachinery,
}
