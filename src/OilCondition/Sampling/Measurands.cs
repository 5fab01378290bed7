using OilCondition.Text;

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
            LimitSide.Upper,
            NaturalScale.Linear,
            0,
            PhysicalRange.HighestWaterMgPerKg,
            "ASTM D6304",
            topic: MeasurandTopic.Water,
            addsUp: true,
            absolutePrecision: 7,
            relativePrecision: 0.1,
            precisionSource: Source.CommonPractice(
                "coulometric Karl Fischer titration of oil: two results agree to some 10 %, and not better than the repeatability of 7 mg/kg of ASTM D1533-00 (its abstract seen)"
            )
        );

    /// <summary>Dissolved water over saturation, as a moisture sensor reads it.</summary>
    public static Measurand RelativeSaturation { get; } =
        new(
            "relative-saturation",
            "relative saturation",
            "%",
            LimitSide.Upper,
            NaturalScale.Linear,
            0,
            100,
            topic: MeasurandTopic.Water,
            absolutePrecision: 2,
            precisionSource: Source.CommonPractice("moisture sensors in oil: 1 to 2 % of saturation")
        );

    /// <summary>Oil temperature at sampling or at the sensor.</summary>
    public static Measurand OilTemperature { get; } =
        new(
            "oil-temperature",
            "oil temperature",
            "°C",
            LimitSide.Upper,
            NaturalScale.Linear,
            PhysicalRange.LowestCelsius,
            PhysicalRange.HighestCelsius
        );

    /// <summary>Running hours of the oil charge, as the machine's meter shows them at sampling.</summary>
    public static Measurand OilHours { get; } =
        new(
            "oil-hours",
            "oil hours",
            "h",
            LimitSide.Upper,
            NaturalScale.Linear,
            0,
            1_000_000,
            topic: MeasurandTopic.Ageing
        );

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
            LimitSide.Both,
            NaturalScale.Linear,
            PhysicalRange.LowestCentistokes,
            20_000,
            "ASTM D445",
            tellsOilIdentity: true,
            topic: MeasurandTopic.OilIdentity
        );

    /// <summary>Kinematic viscosity at 100 °C.</summary>
    public static Measurand Viscosity100 { get; } =
        new(
            "viscosity-100c",
            "viscosity at 100 °C",
            "mm²/s",
            LimitSide.Both,
            NaturalScale.Linear,
            PhysicalRange.LowestCentistokes,
            2_000,
            "ASTM D445",
            tellsOilIdentity: true,
            topic: MeasurandTopic.OilIdentity
        );

    /// <summary>Viscosity index.</summary>
    public static Measurand ViscosityIndex { get; } =
        new(
            "viscosity-index",
            "viscosity index",
            "",
            LimitSide.Lower,
            NaturalScale.Linear,
            -200,
            500,
            "ASTM D2270",
            tellsOilIdentity: true,
            topic: MeasurandTopic.OilIdentity
        );

    /// <summary>Density at 15 °C.</summary>
    public static Measurand Density15 { get; } =
        new(
            "density-15c",
            "density at 15 °C",
            "kg/m³",
            LimitSide.Both,
            NaturalScale.Linear,
            600,
            1_500,
            "ASTM D4052",
            tellsOilIdentity: true,
            topic: MeasurandTopic.OilIdentity
        );

    /// <summary>Acid number.</summary>
    public static Measurand AcidNumber { get; } =
        new(
            "acid-number",
            "acid number",
            "mgKOH/g",
            LimitSide.Upper,
            NaturalScale.Linear,
            0,
            50,
            "ASTM D664",
            addsUp: true,
            topic: MeasurandTopic.Ageing
        );

    /// <summary>Base number.</summary>
    public static Measurand BaseNumber { get; } =
        new(
            "base-number",
            "base number",
            "mgKOH/g",
            LimitSide.Lower,
            NaturalScale.Linear,
            0,
            150,
            "ASTM D2896",
            addsUp: true,
            topic: MeasurandTopic.Ageing
        );

    /// <summary>Oxidation stability by rotating pressure vessel.</summary>
    public static Measurand Rpvot { get; } =
        new(
            "rpvot",
            "RPVOT",
            "min",
            LimitSide.Lower,
            NaturalScale.Linear,
            0,
            5_000,
            "ASTM D2272",
            topic: MeasurandTopic.Ageing
        );

    /// <summary>Antioxidant that is left, against new oil.</summary>
    public static Measurand Antioxidant { get; } =
        new(
            "antioxidant",
            "antioxidant",
            "%",
            LimitSide.Lower,
            NaturalScale.Linear,
            0,
            200,
            "ASTM D6971",
            addsUp: true,
            topic: MeasurandTopic.Ageing
        );

    /// <summary>Membrane patch colour, a measure of varnish potential.</summary>
    public static Measurand MembranePatchColour { get; } =
        new(
            "membrane-patch-colour",
            "membrane patch colour",
            "dE",
            LimitSide.Upper,
            NaturalScale.Linear,
            0,
            200,
            "ASTM D7843",
            topic: MeasurandTopic.Varnish
        );

    /// <summary>Oxidation by infrared spectrometry.</summary>
    public static Measurand Oxidation { get; } =
        new(
            "oxidation",
            "oxidation",
            "A/cm",
            LimitSide.Upper,
            NaturalScale.Linear,
            -5,
            500,
            "ASTM E2412",
            addsUp: true,
            topic: MeasurandTopic.Ageing
        );

    /// <summary>Closed-cup flash point.</summary>
    public static Measurand FlashPoint { get; } =
        new(
            "flash-point",
            "flash point",
            "°C",
            LimitSide.Lower,
            NaturalScale.Linear,
            -20,
            400,
            "ASTM D93",
            topic: MeasurandTopic.OilIdentity
        );

    /// <summary>Interfacial tension against water, of insulating oil.</summary>
    public static Measurand InterfacialTension { get; } =
        new(
            "interfacial-tension",
            "interfacial tension",
            "mN/m",
            LimitSide.Lower,
            NaturalScale.Linear,
            0,
            100,
            "ASTM D971",
            topic: MeasurandTopic.Ageing
        );

    /// <summary>Breakdown voltage over a 2.5 mm gap, of insulating oil; water lowers it first of all.</summary>
    public static Measurand BreakdownVoltage { get; } =
        new(
            "breakdown-voltage",
            "breakdown voltage",
            "kV",
            LimitSide.Lower,
            NaturalScale.Linear,
            0,
            150,
            "IEC 60156",
            topic: MeasurandTopic.Water
        );

    /// <summary>Iron.</summary>
    public static Measurand Iron { get; } = Element("iron", MeasurandTopic.Wear);

    /// <summary>Copper.</summary>
    public static Measurand Copper { get; } = Element("copper", MeasurandTopic.Wear);

    /// <summary>Tin.</summary>
    public static Measurand Tin { get; } = Element("tin", MeasurandTopic.Wear);

    /// <summary>Lead.</summary>
    public static Measurand Lead { get; } = Element("lead", MeasurandTopic.Wear);

    /// <summary>Chromium.</summary>
    public static Measurand Chromium { get; } = Element("chromium", MeasurandTopic.Wear);

    /// <summary>Aluminium, from wear or, together with silicon, from dust.</summary>
    public static Measurand Aluminium { get; } = Element("aluminium", MeasurandTopic.Wear);

    /// <summary>Nickel.</summary>
    public static Measurand Nickel { get; } = Element("nickel", MeasurandTopic.Wear);

    /// <summary>Silver.</summary>
    public static Measurand Silver { get; } = Element("silver", MeasurandTopic.Wear);

    /// <summary>Titanium.</summary>
    public static Measurand Titanium { get; } = Element("titanium", MeasurandTopic.Wear);

    /// <summary>Vanadium, from wear or from heavy fuel.</summary>
    public static Measurand Vanadium { get; } = Element("vanadium", MeasurandTopic.Wear);

    /// <summary>Manganese.</summary>
    public static Measurand Manganese { get; } = Element("manganese", MeasurandTopic.Wear);

    /// <summary>Cadmium.</summary>
    public static Measurand Cadmium { get; } = Element("cadmium", MeasurandTopic.Wear, "");

    /// <summary>Antimony, from white metal or from an additive.</summary>
    public static Measurand Antimony { get; } = Element("antimony", MeasurandTopic.Wear, "");

    /// <summary>Silicon, mostly from dust.</summary>
    public static Measurand Silicon { get; } = Element("silicon", MeasurandTopic.Particles);

    /// <summary>Sodium, from a coolant, from salt water or from an additive.</summary>
    public static Measurand Sodium { get; } = Element("sodium", MeasurandTopic.Other);

    /// <summary>Potassium, mostly from a coolant.</summary>
    public static Measurand Potassium { get; } = Element("potassium", MeasurandTopic.Other);

    /// <summary>Lithium, mostly from grease.</summary>
    public static Measurand Lithium { get; } = Element("lithium", MeasurandTopic.Other, "ASTM D6595");

    /// <summary>Zinc, mostly from an additive.</summary>
    public static Measurand Zinc { get; } = AdditiveElement("zinc");

    /// <summary>Phosphorus, mostly from an additive.</summary>
    public static Measurand Phosphorus { get; } = AdditiveElement("phosphorus");

    /// <summary>Calcium, mostly from an additive.</summary>
    public static Measurand Calcium { get; } = AdditiveElement("calcium");

    /// <summary>Magnesium, mostly from an additive.</summary>
    public static Measurand Magnesium { get; } = AdditiveElement("magnesium");

    /// <summary>Barium, mostly from an additive.</summary>
    public static Measurand Barium { get; } = AdditiveElement("barium");

    /// <summary>Molybdenum, mostly from an additive.</summary>
    public static Measurand Molybdenum { get; } = AdditiveElement("molybdenum");

    /// <summary>Boron, from an additive or from a coolant.</summary>
    public static Measurand Boron { get; } = AdditiveElement("boron");

    /// <summary>Sulfur, from the base oil and from additives.</summary>
    public static Measurand Sulfur { get; } = AdditiveElement("sulfur");

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
        Aluminium,
        Nickel,
        Silver,
        Titanium,
        Vanadium,
        Manganese,
        Cadmium,
        Antimony,
        Silicon,
        Sodium,
        Potassium,
        Lithium,
        Zinc,
        Phosphorus,
        Calcium,
        Magnesium,
        Barium,
        Molybdenum,
        Boron,
        Sulfur,
    ];

    /// <summary>Whether ISO 4406 has a scale number for its counts.</summary>
    internal static bool HasScaleNumber(Measurand measurand) =>
        measurand.Equals(Particles4) || measurand.Equals(Particles6) || measurand.Equals(Particles14);

    private static Measurand Particles(int micrometres) =>
        new(
            $"particles-{micrometres}um",
            $"particles ≥ {micrometres} µm(c)",
            "per mL",
            LimitSide.Upper,
            NaturalScale.Logarithmic,
            0,
            1e9,
            "ISO 11500",
            topic: MeasurandTopic.Particles
        );

    /// <summary>An element that spectrometers report.</summary>
    /// <remarks>
    /// The 22 elements of ASTM D5185 by its clause 16.1 (seen in a reproduction); lithium by ASTM D6595 (from memory); cadmium and antimony
    /// stand in many reports (common practice, no source).
    /// </remarks>
    private static Measurand Element(string name, MeasurandTopic topic, string testMethod = "ASTM D5185") =>
        new(
            name,
            name,
            "mg/kg",
            LimitSide.Upper,
            NaturalScale.Linear,
            0,
            50_000,
            testMethod,
            topic: topic,
            addsUp: true
        );

    private static Measurand AdditiveElement(string name) =>
        new(
            name,
            name,
            "mg/kg",
            LimitSide.Both,
            NaturalScale.Linear,
            0,
            50_000,
            "ASTM D5185",
            tellsOilIdentity: true,
            topic: MeasurandTopic.OilIdentity,
            addsUp: true
        );
}
