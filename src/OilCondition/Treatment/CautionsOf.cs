namespace OilCondition.Treatment;

/// <summary>What to beware of, by the kind of work and its conditions. Which caution goes with which work is told here and nowhere else.</summary>
/// <remarks>
/// A condition that is not known counts as there, so that nobody is told less than a plan would tell. Surfaces burn from 43 °C on (long contact, ISO 13732-1 from
/// memory); light ends and additives leave below 5 kPa from 60 °C on (ours).
/// </remarks>
internal static class CautionsOf
{
    private const double BurningCelsius = 43;
    private const double StrippingCelsius = 60;
    private const double StrippingPascal = 5000;

    /// <summary>Heater and vacuum, with nothing known of the conditions.</summary>
    public static IReadOnlyList<Caution> Vacuum { get; } = Treatment(TreatmentKind.VacuumDehydration);

    /// <summary>Warming a tank by a heater in it, in the order of the list.</summary>
    public static IReadOnlyList<Caution> Heating(WorkConditions conditions) =>
        [
            .. Treatment(TreatmentKind.Coalescer, conditions with { IsHeated = true })
                .Where(caution => caution is not (Caution.PressurisedOil or Caution.MovingMachinery)),
        ];

    /// <summary>The cautions of a kind of treatment under its conditions, in the order of their list.</summary>
    public static IReadOnlyList<Caution> Treatment(TreatmentKind kind, WorkConditions conditions = default)
    {
        var isVacuum = kind == TreatmentKind.VacuumDehydration;
        var isPumped = kind != TreatmentKind.SettlingAndDraining;
        var isOilChange = kind is TreatmentKind.SettlingAndDraining or TreatmentKind.DrainAndRefill;
        var usuallyHeats = isVacuum || kind is TreatmentKind.Centrifuge or TreatmentKind.Coalescer;
        var heats = conditions.IsHeated ?? usuallyHeats;
        var isHot = !(conditions.HottestCelsius < BurningCelsius);
        var hasFreeWater = conditions.HasFreeWater ?? true;
        (Caution Caution, bool Applies)[] all =
        [
            (Caution.HotOil, isHot),
            (Caution.Vacuum, isVacuum),
            (Caution.FlashPoint, heats || (isHot && (isVacuum || kind == TreatmentKind.HeadSpacePurge))),
            (Caution.ElectricalIsolation, true),
            (Caution.PressurisedOil, true),
            (Caution.SpillsAndWaste, true),
            (Caution.MakersLimits, true),
            (Caution.LocalCodes, true),
            (Caution.FoamOver, isVacuum && (hasFreeWater || (conditions.HasDetergents ?? true))),
            (
                Caution.LightEndsLost,
                isVacuum
                    && !(conditions.HottestCelsius < StrippingCelsius)
                    && !(conditions.ChamberPascal > StrippingPascal)
            ),
            (Caution.CokingOnHeater, heats),
            (Caution.DrainWaterFirst, !isOilChange && hasFreeWater),
            (Caution.MovingMachinery, isPumped),
        ];
        return [.. all.Where(one => one.Applies).Select(one => one.Caution)];
    }
}
