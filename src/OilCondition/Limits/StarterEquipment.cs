namespace OilCondition.Limits;

/// <summary>Kinds of equipment for which starting limits exist.</summary>
public enum StarterEquipment
{
    /// <summary>Steam, gas and hydro turbine oil.</summary>
    Turbine,

    /// <summary>Mineral anti-wear hydraulic oil.</summary>
    Hydraulic,

    /// <summary>Industrial gear oil.</summary>
    Gear,

    /// <summary>Circulating and bearing oil with rust and oxidation inhibitors.</summary>
    Circulating,

    /// <summary>Mineral insulating oil of equipment above 170 kV.</summary>
    InsulatingAbove170Kilovolt,

    /// <summary>Mineral insulating oil of equipment from 72.5 to 170 kV.</summary>
    Insulating72To170Kilovolt,

    /// <summary>Mineral insulating oil of equipment up to 72.5 kV.</summary>
    InsulatingUpTo72Kilovolt,
}
