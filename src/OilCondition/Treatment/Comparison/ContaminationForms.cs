namespace OilCondition.Treatment;

/// <summary>Forms of contamination, as far as treatments tell them apart.</summary>
[Flags]
public enum ContaminationForms
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Free water in drops that settle.</summary>
    FreeWater = 1,

    /// <summary>Free water in drops that do not settle.</summary>
    EmulsifiedWater = 2,

    /// <summary>Water in solution.</summary>
    DissolvedWater = 4,

    /// <summary>Dissolved gas: named in a row, computed by <see cref="GasLoad"/>.</summary>
    Gas = 8,

    /// <summary>Particles.</summary>
    Particles = 16,
}
