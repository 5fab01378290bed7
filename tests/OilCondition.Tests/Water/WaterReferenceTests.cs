using OilCondition.Tests.Reference;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

/// <summary>water.csv: every quantity is mapped to a library call or left out with a reason.</summary>
public class WaterReferenceTests
{
    private const string File = "water.csv";
    private const double PascalPerInch = 3386.389;

    private static readonly Dictionary<string, Func<ReferenceCase, double>> Mapped = new(StringComparer.Ordinal)
    {
        ["saturation coefficient A"] = row => Set(row).A,
        ["saturation coefficient B"] = row => Set(row).BKelvin,
        ["tabulated saturation, transformer mineral oil"] = row =>
            Saturation(PublishedSaturationCurves.TransformerMineralOil, row),
        ["saturation, set M1"] = row => Saturation(PublishedSaturationCurves.TransformerMineralOil, row),
        ["saturation, set M2"] = row => Saturation(PublishedSaturationCurves.TransformerMineralOilSteeper, row),
        ["saturation, set NE"] = row => Saturation(PublishedSaturationCurves.SoyaEster, row),
        ["NACA water solubility (n-heptane, H/C=0.19182)"] = row =>
            HydrocarbonSolubility.MoleFraction(row.Number("HC_weight"), At(row)).Percent,
        ["NACA water solubility of a base oil as mass ppm"] = row =>
            HydrocarbonSolubility
                .Saturation(row.Number("HC_weight"), MolarMass.FromGramsPerMole(row.Number("M_g_per_mol")), At(row))
                .PartsPerMillion,
        ["NACA equation recast as A"] = row => Hydrocarbon(row, row.Number("M_g_per_mol")).A,
        ["NACA equation recast as B"] = row => Hydrocarbon(row, 400).BKelvin,
        ["two-point fit A"] = row => TwoPoints(row).A,
        ["two-point fit B"] = row => TwoPoints(row).BKelvin,
        ["relative saturation"] = row => Set(row).Split(Ppm(row, "C_ppm"), At(row)).RelativeSaturation.DecimalFractions,
        ["free water"] = row => Set(row).Split(Ppm(row, "C_total_ppm"), At(row)).Free.PartsPerMillion,
        ["free water dropped out on cooling"] = row =>
            Set(row)
                .Cool(Ppm(row, "C_ppm"), Celsius(row, "t_hot_C"), Celsius(row, "t_cold_C"))
                .SeparatedMass(Mass.FromKilograms(row.Number("oil_mass_kg")))
                .Kilograms,
        ["temperature at which dissolved water becomes free (oil dew temperature)"] = row =>
            Set(row).SeparationPoint(Ppm(row, "C_ppm")).Temperature.DegreesCelsius,
        ["ppm volume from ppm mass"] = row =>
            WaterContent
                .ByVolume(Ppm(row, "ppm_mass"), Rho(row, "rho_oil_kg_m3"), Rho(row, "rho_water_kg_m3"))
                .PartsPerMillion,
        ["water volume in oil charge"] = row =>
            WaterContent
                .VolumeIn(
                    Volume.FromLiters(row.Number("oil_volume_L")),
                    Rho(row, "rho_oil_kg_m3"),
                    Ppm(row, "C_ppm_mass"),
                    Rho(row, "rho_water_kg_m3")
                )
                .Liters,
        ["equilibrium water content with head-space air"] = row => HeadSpace(row).Dissolved.PartsPerMillion,
        ["ultimate water content under vacuum"] = row => Ultimate(row).Dissolved.PartsPerMillion,
        ["water mole fraction in vapour with dry-air sweep"] = row =>
            VacuumStage.MoleFraction(Flow(row, "water_kg_h"), Flow(row, "dry_air_kg_h")).DecimalFractions,
        ["outlet water content of one equilibrium stage"] = row => Outlet(row).Total.PartsPerMillion,
    };

    /// <summary>What a row's word must agree with: the result case that the library names.</summary>
    private static readonly Dictionary<string, Func<ReferenceCase, ReferenceBehaviour>> Worded = new(
        StringComparer.Ordinal
    )
    {
        ["relative saturation"] = row => Said(Set(row).Split(Ppm(row, "C_ppm"), At(row))),
        ["free water"] = row => Said(Set(row).Split(Ppm(row, "C_total_ppm"), At(row))),
        ["temperature at which dissolved water becomes free (oil dew temperature)"] = row =>
            Set(row).SeparationPoint(Ppm(row, "C_ppm")) switch
            {
                { StaysDissolved: true } => ReferenceBehaviour.Never,
                { StaysFree: true } => ReferenceBehaviour.Saturated,
                _ => ReferenceBehaviour.Figure,
            },
        ["equilibrium water content with head-space air"] = row => InEquilibrium(HeadSpace(row)),
        ["ultimate water content under vacuum"] = row => InEquilibrium(Ultimate(row)),
        ["outlet water content of one equilibrium stage"] = row => Said(Outlet(row)),
    };

    /// <summary>Beginnings of the names of quantities that no call of the Water room answers.</summary>
    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["saturation point, "] = "single recalled points, order of magnitude only",
        ["typical saturation range"] = "guide figures",
        ["moisture uptake of synthetic lubricant ester"] = "guide figures",
        ["ASTM D4056 scope"] = "scope of a method that is not implemented: it excludes formulated oils",
        ["ppm mass from percent mass"] = "UnitsNet converts",
        ["Karl Fischer"] = "titration precision: belongs to the test methods of samples",
        ["repeatability r="] = "titration precision, recalled and unverified",
        ["reproducibility R="] = "titration precision, recalled and unverified",
        ["crackle test"] = "guide figures",
        ["guide limit"] = "belongs to limits",
        ["achieved water content"] = "guide figures",
        ["single-pass removal"] = "guide figures",
        ["kidney-loop"] = "belongs to purification",
        ["fraction removed after N turnovers"] = "belongs to purification",
        ["turnovers for"] = "belongs to purification",
        ["outlet after n single passes"] = "belongs to purification",
        ["relative bearing fatigue life"] = "belongs to prognosis",
        ["life ratio for change of water content"] = "belongs to prognosis",
        ["relative oil oxidation life"] = "belongs to prognosis",
        ["activation energy equal to doubling"] = "belongs to prognosis",
        ["Arrhenius life ratio"] = "belongs to prognosis",
    };

    /// <summary>What the library makes of a row.</summary>
    internal static double Answer(ReferenceCase row) => Mapped[row.Quantity](row);

    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory(File, row => Mapped.ContainsKey(row.Quantity) && row.Tolerance != "guide");

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Agrees_with_its_source(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        row.ShouldAgreeOrSay(Mapped, Worded);
    }

    /// <summary>Invented rows: water boils at 60.1 °C under 24 inHg at sea level, so oil at 40 °C stays saturated and oil at 65 °C does not.</summary>
    [Theory]
    [InlineData("ultimate water content under vacuum", "t_C=40; vacuum_inHg=24; y_water=1", "saturated", true)]
    [InlineData("ultimate water content under vacuum", "t_C=65; vacuum_inHg=24; y_water=1", "saturated", false)]
    [InlineData("ultimate water content under vacuum", "t_C=65; vacuum_inHg=30.5; y_water=1", "rejected", true)]
    [InlineData("ultimate water content under vacuum", "t_C=65; vacuum_inHg=24; y_water=1.2", "invalid", true)]
    [InlineData(
        "outlet water content of one equilibrium stage",
        "t_C=40; vacuum_inHg=24; oil_kg_h=1000; Cin_ppm=900; dry_air_kg_h=0",
        "saturated",
        true
    )]
    [InlineData(
        "equilibrium water content with head-space air",
        "t_air_C=30; RH_air=0.9; t_oil_C=20",
        "saturated",
        true
    )]
    [InlineData("equilibrium water content with head-space air", "t_air_C=30; RH_air=1.2; t_oil_C=20", "error", true)]
    [InlineData("temperature at which dissolved water becomes free (oil dew temperature)", "C_ppm=0", "never", true)]
    [InlineData(
        "temperature at which dissolved water becomes free (oil dew temperature)",
        "C_ppm=-1",
        "impossible / rejected",
        true
    )]
    [InlineData("temperature at which dissolved water becomes free (oil dew temperature)", "C_ppm=100", "never", false)]
    [InlineData("relative saturation", "C_ppm=90; t_C=20", "saturated", true)]
    [InlineData("two-point fit A", "t1_C=40; S1_ppm=100; t2_C=40; S2_ppm=200", "undefined", true)]
    [InlineData("two-point fit B", "t1_C=20; S1_ppm=200; t2_C=60; S2_ppm=100", "invalid", true)]
    [InlineData("two-point fit B", "t1_C=20; S1_ppm=100; t2_C=60; S2_ppm=200", "invalid", false)]
    public void Words_mean_result_cases(string quantity, string inputs, string word, bool agrees)
    {
        var row = ReferenceWords.Invented(quantity, "set=M2; p_atm_Pa=101325; " + inputs, word);
        row.Agrees(Worded, Mapped).ShouldBe(agrees);
    }

    [Fact]
    public void A_word_without_a_meaning_fails() =>
        Should.Throw<InvalidOperationException>(() => ReferenceWords.Meanings("never / perhaps"));

    [Fact]
    public void Every_quantity_is_mapped_or_left_out_with_a_reason() =>
        ReferenceFolder.ShouldAnswerFor(
            File,
            quantity =>
                Mapped.ContainsKey(quantity)
                || LeftOut.Keys.Any(start => quantity.StartsWith(start, StringComparison.Ordinal))
        );

    [Fact]
    public void Every_published_curve_has_its_rows() =>
        ReferenceFolder
            .Cases(File)
            .Where(row => row.Quantity == "saturation coefficient A")
            .Select(Set)
            .ShouldBe(PublishedSaturationCurves.All, ignoreOrder: true);

    private static SaturationCurve Set(ReferenceCase row) =>
        row.Arguments["set"] switch
        {
            "M1" => PublishedSaturationCurves.TransformerMineralOil,
            "M2" => PublishedSaturationCurves.TransformerMineralOilSteeper,
            "NE" => PublishedSaturationCurves.SoyaEster,
            var other => throw new InvalidOperationException(other),
        };

    private static double Saturation(SaturationCurve curve, ReferenceCase row) =>
        curve.SaturationAt(At(row)).Content.PartsPerMillion;

    private static SaturationCurve Hydrocarbon(ReferenceCase row, double gramPerMole) =>
        SaturationCurve.FromHydrocarbon("oil", row.Number("HC_weight"), MolarMass.FromGramsPerMole(gramPerMole));

    private static SaturationCurve TwoPoints(ReferenceCase row) =>
        SaturationCurve.FromTwoPoints(
            "oil",
            Celsius(row, "t1_C"),
            Ppm(row, "S1_ppm"),
            Celsius(row, "t2_C"),
            Ppm(row, "S2_ppm"),
            Source.UserData("made-up points of the row")
        );

    private static VacuumStage Stage(ReferenceCase row) =>
        new(
            Set(row),
            At(row),
            GaugeVacuum
                .FromReading(
                    Pressure.FromPascals(row.Number("vacuum_inHg") * PascalPerInch),
                    Pressure.FromPascals(row.Number("p_atm_Pa"))
                )
                .AbsolutePressure
        );

    private static WaterState Outlet(ReferenceCase row) =>
        Stage(row).Outlet(Flow(row, "oil_kg_h"), Ppm(row, "Cin_ppm"), SweepAir.Dry(Flow(row, "dry_air_kg_h"))).Water;

    private static WaterState Ultimate(ReferenceCase row) =>
        Stage(row).Floor(Ratio.FromDecimalFractions(row.Number("y_water")));

    private static WaterState HeadSpace(ReferenceCase row) =>
        Set(row)
            .EquilibriumWith(
                HumidAir.FromRelativeHumidity(
                    Celsius(row, "t_air_C"),
                    RelativeHumidity.FromPercent(100 * row.Number("RH_air"))
                ),
                Celsius(row, "t_oil_C")
            );

    private static ReferenceBehaviour InEquilibrium(WaterState state) =>
        state.Knowledge == WaterKnowledge.AtLeast ? ReferenceBehaviour.Saturated : ReferenceBehaviour.Unsaturated;

    private static ReferenceBehaviour Said(WaterState state) =>
        state.Headroom.PartsPerMillion > 0 ? ReferenceBehaviour.Unsaturated : ReferenceBehaviour.Saturated;

    private static Temperature At(ReferenceCase row) =>
        row.Arguments.ContainsKey("T_K") ? Temperature.FromKelvins(row.Number("T_K")) : Celsius(row, "t_C");

    private static Temperature Celsius(ReferenceCase row, string name) =>
        Temperature.FromDegreesCelsius(row.Number(name));

    private static MassFraction Ppm(ReferenceCase row, string name) =>
        MassFraction.FromPartsPerMillion(row.Number(name));

    private static Density Rho(ReferenceCase row, string name) => Density.FromKilogramsPerCubicMeter(row.Number(name));

    private static MassFlow Flow(ReferenceCase row, string name) => MassFlow.FromKilogramsPerHour(row.Number(name));
}
