namespace OilCondition.Treatment;

/// <summary>What a treatment uses up.</summary>
public enum CostKind
{
    /// <summary>Hours of running, for hire and attendance.</summary>
    Hours,

    /// <summary>Heat and electricity, kWh.</summary>
    KilowattHours,

    /// <summary>Elements.</summary>
    Elements,

    /// <summary>Litres of new oil.</summary>
    LitresOfNewOil,

    /// <summary>Litres of used oil and of water for disposal.</summary>
    LitresOfWaste,
}
