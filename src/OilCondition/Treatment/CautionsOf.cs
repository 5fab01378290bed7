namespace OilCondition.Treatment;

/// <summary>What to beware of, by the kind of work. Which caution goes with which treatment is told here and nowhere else.</summary>
internal static class CautionsOf
{
    /// <summary>Draining and opening at standstill.</summary>
    public static IReadOnlyList<Caution> Draining { get; } =
    [
        Caution.HotOil,
        Caution.SpillsAndWaste,
        Caution.PressurisedOil,
        Caution.ElectricalIsolation,
        Caution.MakersLimits,
        Caution.LocalCodes,
    ];

    /// <summary>A loop that pumps oil, warm or not.</summary>
    public static IReadOnlyList<Caution> Loop { get; } =
    [
        Caution.HotOil,
        Caution.ElectricalIsolation,
        Caution.PressurisedOil,
        Caution.SpillsAndWaste,
        Caution.MakersLimits,
        Caution.LocalCodes,
    ];

    /// <summary>A loop with a heater, and air over warm oil.</summary>
    public static IReadOnlyList<Caution> Heating { get; } = [.. Loop, Caution.FlashPoint];

    /// <summary>Heater and vacuum.</summary>
    public static IReadOnlyList<Caution> Vacuum { get; } = [.. Heating, Caution.Vacuum];

    /// <summary>The cautions of a kind of treatment.</summary>
    public static IReadOnlyList<Caution> Treatment(TreatmentKind kind) =>
        kind switch
        {
            TreatmentKind.SettlingAndDraining or TreatmentKind.DrainAndRefill => Draining,
            TreatmentKind.WaterAbsorbingElements or TreatmentKind.FineFiltration => Loop,
            TreatmentKind.Centrifuge or TreatmentKind.Coalescer or TreatmentKind.HeadSpacePurge => Heating,
            TreatmentKind.VacuumDehydration => Vacuum,
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No cautions are stated for this kind."),
        };
}
