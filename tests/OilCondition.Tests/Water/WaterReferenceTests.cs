using OilCondition.Sources;
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
            Saturation(PublishedSaturationCurves.TransformerMineralOilGriffin, row),
        ["saturation, set M1"] = row => Saturation(PublishedSaturationCurves.TransformerMineralOilGriffin, row),
        ["saturation, set M2"] = row => Saturation(PublishedSaturationCurves.TransformerMineralOilOommen, row),
        ["saturation, set NE"] = row => Saturation(PublishedSaturationCurves.NaturalEsterLewand, row),
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
        ["equilibrium water content with head-space air"] = row =>
            Set(row)
                .EquilibriumWith(
                    HumidAir.FromRelativeHumidity(
                        Celsius(row, "t_air_C"),
                        RelativeHumidity.FromPercent(100 * row.Number("RH_air"))
                    ),
                    Celsius(row, "t_oil_C")
                )
                .Content.PartsPerMillion,
        ["ultimate water content under vacuum"] = row =>
            Stage(row).Floor(Ratio.FromDecimalFractions(row.Number("y_water"))).Content.PartsPerMillion,
        ["water mole fraction in vapour with dry-air sweep"] = row =>
            VacuumStage.MoleFraction(Flow(row, "water_kg_h"), Flow(row, "dry_air_kg_h")).DecimalFractions,
        ["outlet water content of one equilibrium stage"] = row =>
            Stage(row)
                .Outlet(Flow(row, "oil_kg_h"), Ppm(row, "Cin_ppm"), SweepAir.Dry(Flow(row, "dry_air_kg_h")))
                .Water.Total.PartsPerMillion,
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

    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory(File, row => Mapped.ContainsKey(row.Quantity) && row.Tolerance != "guide");

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Agrees_with_its_source(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        if (row.TryNumber(out _))
        {
            row.ShouldAgree(Mapped[row.Quantity](row));
        }
        else
        {
            Should.Throw<ArgumentException>(() => Mapped[row.Quantity](row), $"{id}: {row.Value}");
        }
    }

    [Fact]
    public void Every_quantity_is_mapped_or_left_out_with_a_reason() =>
        ReferenceFolder
            .Cases(File)
            .Select(row => row.Quantity)
            .Distinct()
            .Where(quantity =>
                !Mapped.ContainsKey(quantity)
                && !LeftOut.Keys.Any(start => quantity.StartsWith(start, StringComparison.Ordinal))
            )
            .ShouldBeEmpty();

    private static SaturationCurve Set(ReferenceCase row) =>
        row.Arguments["set"] switch
        {
            "M1" => PublishedSaturationCurves.TransformerMineralOilGriffin,
            "M2" => PublishedSaturationCurves.TransformerMineralOilOommen,
            "NE" => PublishedSaturationCurves.NaturalEsterLewand,
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

    private static Temperature At(ReferenceCase row) =>
        row.Arguments.ContainsKey("T_K") ? Temperature.FromKelvins(row.Number("T_K")) : Celsius(row, "t_C");

    private static Temperature Celsius(ReferenceCase row, string name) =>
        Temperature.FromDegreesCelsius(row.Number(name));

    private static MassFraction Ppm(ReferenceCase row, string name) =>
        MassFraction.FromPartsPerMillion(row.Number(name));

    private static Density Rho(ReferenceCase row, string name) => Density.FromKilogramsPerCubicMeter(row.Number(name));

    private static MassFlow Flow(ReferenceCase row, string name) => MassFlow.FromKilogramsPerHour(row.Number(name));
}
