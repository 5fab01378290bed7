using OilCondition.Text;
using OilCondition.Viscosity;
using OilCondition.Water;

namespace OilCondition;

/// <summary>The measurands that the library knows by itself. Users add their own with <see cref="MeasurandCatalog.With"/>.</summary>
/// <remarks>Plausible ranges are wide on purpose (common practice, no source): they stop typing errors, not bad oils.</remarks>
public static class Measurands
{
    /// <summary>Total water by mass.</summary>
    public static Measurand WaterContent { get; } =
        new(
            "water-content",
            "water content",
            "mg/kg",
            WorseDirection.Higher,
            NaturalScale.Linear,
            0,
            PhysicalRange.HighestWaterMgPerKg,
            "ASTM D6304",
            topic: "water",
            addsUp: true
        );

    /// <summary>Dissolved water over saturation, as a moisture sensor reads it.</summary>
    public static Measurand RelativeSaturation { get; } =
        new(
            "relative-saturation",
            "relative saturation",
            "%",
            WorseDirection.Higher,
            NaturalScale.Linear,
            0,
            100,
            topic: "water"
        );

    /// <summary>Oil temperature at sampling or at the sensor.</summary>
    public static Measurand OilTemperature { get; } =
        new(
            "oil-temperature",
            "oil temperature",
            "°C",
            WorseDirection.Higher,
            NaturalScale.Linear,
            PhysicalRange.LowestCelsius,
            PhysicalRange.HighestCelsius
        );

    /// <summary>Running hours of the oil charge, as the machine's meter shows them at sampling.</summary>
    public static Measurand OilHours { get; } =
        new("oil-hours", "oil hours", "h", WorseDirection.EitherWay, NaturalScale.Linear, 0, 1_000_000);

    /// <summary>Particles of at least 4 µm(c).</summary>
    public static Measurand Particles4 { get; } = Particles(4);

    /// <summary>Particles of at least 6 µm(c).</summary>
    public static Measurand Particles6 { get; } = Particles(6);

    /// <summary>Particles of at least 14 µm(c).</summary>
    public static Measurand Particles14 { get; } = Particles(14);

    /// <summary>Kinematic viscosity at 40 °C.</summary>
    public static Measurand Viscosity40 { get; } =
        new(
            "viscosity-40c",
            "viscosity at 40 °C",
            "mm²/s",
            WorseDirection.EitherWay,
            NaturalScale.Linear,
            PhysicalRange.LowestCentistokes,
            20_000,
            "ASTM D445",
            tellsOilIdentity: true
        );

    /// <summary>Kinematic viscosity at 100 °C.</summary>
    public static Measurand Viscosity100 { get; } =
        new(
            "viscosity-100c",
            "viscosity at 100 °C",
            "mm²/s",
            WorseDirection.EitherWay,
            NaturalScale.Linear,
            PhysicalRange.LowestCentistokes,
            2_000,
            "ASTM D445",
            tellsOilIdentity: true
        );

    /// <summary>Viscosity index.</summary>
    public static Measurand ViscosityIndex { get; } =
        new(
            "viscosity-index",
            "viscosity index",
            "",
            WorseDirection.Lower,
            NaturalScale.Linear,
            -200,
            500,
            "ASTM D2270",
            tellsOilIdentity: true
        );

    /// <summary>Density at 15 °C.</summary>
    public static Measurand Density15 { get; } =
        new(
            "density-15c",
            "density at 15 °C",
            "kg/m³",
            WorseDirection.EitherWay,
            NaturalScale.Linear,
            600,
            1_500,
            "ASTM D4052",
            tellsOilIdentity: true
        );

    /// <summary>Acid number.</summary>
    public static Measurand AcidNumber { get; } =
        new(
            "acid-number",
            "acid number",
            "mgKOH/g",
            WorseDirection.Higher,
            NaturalScale.Linear,
            0,
            50,
            "ASTM D664",
            addsUp: true
        );

    /// <summary>Base number.</summary>
    public static Measurand BaseNumber { get; } =
        new(
            "base-number",
            "base number",
            "mgKOH/g",
            WorseDirection.Lower,
            NaturalScale.Linear,
            0,
            150,
            "ASTM D2896",
            addsUp: true
        );

    /// <summary>Oxidation stability by rotating pressure vessel.</summary>
    public static Measurand Rpvot { get; } =
        new("rpvot", "RPVOT", "min", WorseDirection.Lower, NaturalScale.Linear, 0, 5_000, "ASTM D2272");

    /// <summary>Antioxidant that is left, against new oil.</summary>
    public static Measurand Antioxidant { get; } =
        new(
            "antioxidant",
            "antioxidant",
            "%",
            WorseDirection.Lower,
            NaturalScale.Linear,
            0,
            200,
            "ASTM D6971",
            addsUp: true
        );

    /// <summary>Membrane patch colour, a measure of varnish potential.</summary>
    public static Measurand MembranePatchColour { get; } =
        new(
            "membrane-patch-colour",
            "membrane patch colour",
            "dE",
            WorseDirection.Higher,
            NaturalScale.Linear,
            0,
            200,
            "ASTM D7843"
        );

    /// <summary>Oxidation by infrared spectrometry.</summary>
    public static Measurand Oxidation { get; } =
        new(
            "oxidation",
            "oxidation",
            "A/cm",
            WorseDirection.Higher,
            NaturalScale.Linear,
            -5,
            500,
            "ASTM E2412",
            addsUp: true
        );

    /// <summary>Closed-cup flash point.</summary>
    public static Measurand FlashPoint { get; } =
        new("flash-point", "flash point", "°C", WorseDirection.Lower, NaturalScale.Linear, -20, 400, "ASTM D93");

    /// <summary>Interfacial tension against water, of insulating oil.</summary>
    public static Measurand InterfacialTension { get; } =
        new(
            "interfacial-tension",
            "interfacial tension",
            "mN/m",
            WorseDirection.Lower,
            NaturalScale.Linear,
            0,
            100,
            "ASTM D971"
        );

    /// <summary>Breakdown voltage over a 2.5 mm gap, of insulating oil.</summary>
    public static Measurand BreakdownVoltage { get; } =
        new(
            "breakdown-voltage",
            "breakdown voltage",
            "kV",
            WorseDirection.Lower,
            NaturalScale.Linear,
            0,
            150,
            "IEC 60156"
        );

    /// <summary>Iron.</summary>
    public static Measurand Iron { get; } = WearMetal("iron");

    /// <summary>Copper.</summary>
    public static Measurand Copper { get; } = WearMetal("copper");

    /// <summary>Tin.</summary>
    public static Measurand Tin { get; } = WearMetal("tin");

    /// <summary>Lead.</summary>
    public static Measurand Lead { get; } = WearMetal("lead");

    /// <summary>Chromium.</summary>
    public static Measurand Chromium { get; } = WearMetal("chromium");

    /// <summary>Silicon, mostly from dust.</summary>
    public static Measurand Silicon { get; } = WearMetal("silicon");

    /// <summary>Zinc, mostly from an additive.</summary>
    public static Measurand Zinc { get; } = AdditiveElement("zinc");

    /// <summary>Phosphorus, mostly from an additive.</summary>
    public static Measurand Phosphorus { get; } = AdditiveElement("phosphorus");

    /// <summary>Calcium, mostly from an additive.</summary>
    public static Measurand Calcium { get; } = AdditiveElement("calcium");

    /// <summary>All of them, in the order of this page.</summary>
    public static IReadOnlyList<Measurand> All { get; } =
    [
        WaterContent,
        RelativeSaturation,
        OilTemperature,
        OilHours,
        Particles4,
        Particles6,
        Particles14,
        Viscosity40,
        Viscosity100,
        ViscosityIndex,
        Density15,
        AcidNumber,
        BaseNumber,
        Rpvot,
        Antioxidant,
        MembranePatchColour,
        Oxidation,
        FlashPoint,
        InterfacialTension,
        BreakdownVoltage,
        Iron,
        Copper,
        Tin,
        Lead,
        Chromium,
        Silicon,
        Zinc,
        Phosphorus,
        Calcium,
    ];

    private static Measurand Particles(int micrometres) =>
        new(
            $"particles-{micrometres}um",
            $"particles ≥ {micrometres} µm(c)",
            "per mL",
            WorseDirection.Higher,
            NaturalScale.Logarithmic,
            0,
            1e9,
            "ISO 11500",
            topic: "particles"
        );

    private static Measurand WearMetal(string name) =>
        new(name, name, "mg/kg", WorseDirection.Higher, NaturalScale.Linear, 0, 50_000, "ASTM D5185", addsUp: true);

    private static Measurand AdditiveElement(string name) =>
        new(
            name,
            name,
            "mg/kg",
            WorseDirection.EitherWay,
            NaturalScale.Linear,
            0,
            50_000,
            "ASTM D5185",
            tellsOilIdentity: true,
            addsUp: true
        );
}
