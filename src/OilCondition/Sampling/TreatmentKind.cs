namespace OilCondition;

/// <summary>Ways to clean an oil fill, planned or recorded: the one list of them.</summary>
public enum TreatmentKind
{
    /// <summary>Let free water and heavy dirt settle, and drain them.</summary>
    SettlingAndDraining,

    /// <summary>Centrifuge: free water and part of the emulsion.</summary>
    Centrifuge,

    /// <summary>Coalescer: free water.</summary>
    Coalescer,

    /// <summary>Water-absorbing elements: free and emulsified water, up to their capacity.</summary>
    WaterAbsorbingElements,

    /// <summary>Vacuum dehydration: free, emulsified and dissolved water, and gas.</summary>
    VacuumDehydration,

    /// <summary>Purge of the head-space with dry air: all forms of water, slowly.</summary>
    HeadSpacePurge,

    /// <summary>Fine filtration in a kidney loop: particles.</summary>
    FineFiltration,

    /// <summary>Drain the oil and fill new. It is recorded as an <see cref="OilChange"/>, since a new oil fill starts with it.</summary>
    DrainAndRefill,
}
