using OilCondition.Tests.Reference;
using OilCondition.Thermal;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Thermal;

/// <summary>heat.csv: every quantity is mapped to a library call or left out with a reason.</summary>
public class HeatReferenceTests
{
    private const string File = "heat.csv";

    private static readonly Dictionary<string, Func<ReferenceCase, double>> Mapped = new(StringComparer.Ordinal)
    {
        ["specific heat, Cragoe"] = row =>
            row.Unit.StartsWith("Btu", StringComparison.Ordinal)
                ? Cragoe(row).HeatCapacity.KilojoulesPerKilogramKelvin / 4.1868
                : Cragoe(row).HeatCapacity.KilojoulesPerKilogramKelvin,
        ["thermal conductivity, Cragoe"] = row => Cragoe(row).Conductivity.WattsPerMeterKelvin,
        ["VCF coefficient K0 lubricating oil, 60 F basis"] = _ => ThermalExpansion.LubricatingOil.K0,
        ["VCF coefficient K1 lubricating oil, 60 F basis"] = _ => ThermalExpansion.LubricatingOil.K1,
        ["VCF coefficient K2 lubricating oil, 60 F basis"] = _ => ThermalExpansion.LubricatingOil.K2,
        ["CTL worked example 1 (crude, group A)"] = WorkedExample,
        ["CTL worked example 2 (crude, group A)"] = WorkedExample,
        ["CTL worked example 3 (refined, fuel-oil band)"] = WorkedExample,
        ["CTL worked example 7 (given alpha)"] = row =>
            VolumeCorrection
                .Api2004(
                    CoefficientOfThermalExpansion.FromPerDegreeFahrenheit(row.Number("alpha60_per_F")),
                    Rho(row, "rho_obs"),
                    At(row)
                )
                .Factor.DecimalFractions,
        ["CTL lubricating oil, full 2004 algorithm"] = row =>
            VolumeCorrection.Api2004(Rho(row, "rho60"), At(row)).Factor.DecimalFractions,
        ["CTL lubricating oil, simple form"] = row =>
            VolumeCorrection.Table6D(Rho(row, "rho60"), At(row)).Factor.DecimalFractions,
        ["VCF to 15 degC lubricating oil"] = row =>
            VolumeCorrection.Table54D(Rho(row, "rho15"), At(row)).Factor.DecimalFractions,
        ["density of lubricating oil"] = row => Oil(row).Density.KilogramsPerCubicMeter,
        ["density at 15 degC from observed density"] = row =>
            VolumeCorrection.DensityAt15(Rho(row, "rho_obs"), At(row)).KilogramsPerCubicMeter,
        ["volumetric thermal expansion coefficient, lubricating oil"] = row => Oil(row).Expansion.PerKelvin,
        ["API gravity from relative density"] = row =>
            OilProperties.FromRelativeDensity(row.Number("d")).ApiGravityDegrees,
        ["in-line heater power"] = row =>
            (double)
                OilHeating
                    .PowerForRise(
                        VolumeFlow.FromLitersPerMinute(row.Number("Q_L_min")),
                        Rho(row, "rho_kg_m3"),
                        Capacity(row),
                        TemperatureDelta.FromKelvins(row.Number("dT_K"))
                    )
                    .Kilowatts,
        ["tank heater power, energy balance"] = row =>
            (double)
                OilHeating
                    .PowerToWarm(
                        Volume.FromLiters(row.Number("V_L")) * Rho(row, "rho_kg_m3"),
                        Capacity(row),
                        TemperatureDelta.FromKelvins(row.Number("dT_K")),
                        TimeSpan.FromHours(row.Number("t_h"))
                    )
                    .Kilowatts,
        ["tank temperature after heating"] = After,
        ["tank temperature while cooling"] = After,
        ["time to reach temperature"] = row =>
            TimeTo(row).ShouldBeOfType<Arrival<TimeSpan>.Expected>().Estimate.TotalHours,
        ["oil tank heat-transfer coefficient"] = row =>
            TankHeatLoss
                .Guide(
                    (row.Arguments["site"], row.Arguments["wall"]) switch
                    {
                        ("exposed", "insulated") => TankSurface.ExposedInsulated,
                        ("exposed", _) => TankSurface.ExposedBare,
                        (_, "insulated") => TankSurface.ShelteredInsulated,
                        _ => TankSurface.ShelteredBare,
                    },
                    At(row)
                )
                .Coefficient.WattsPerSquareMeterKelvin,
        ["tank heat loss"] = row =>
            (double)
                TankHeatLoss
                    .FromCoefficient(HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(row.Number("alpha_W_m2K")))
                    .Loss(Area.FromSquareMeters(row.Number("A_m2")), TemperatureDelta.FromKelvins(row.Number("dT_K")))
                    .Kilowatts,
        ["heat to evaporate water"] = row =>
            (double)
                WaterVapour.HeatToEvaporate(MassFlow.FromKilogramsPerHour(row.Number("water_kg_h")), At(row)).Kilowatts,
        ["oil temperature drop by flashing water"] = row =>
            WaterVapour
                .CoolingByEvaporation(
                    MassFraction.FromPartsPerMillion(row.Number("water_removed_ppm")),
                    At(row),
                    Capacity(row)
                )
                .Kelvins,
        ["vapour volume flow at vacuum"] = row =>
            WaterVapour
                .VolumeFlowOf(
                    MassFlow.FromKilogramsPerHour(row.Number("water_kg_h")),
                    At(row),
                    Pressure.FromPascals(row.Number("p_Pa"))
                )
                .CubicMetersPerHour,
    };

    /// <summary>What a row's word must agree with: the result case that the library names.</summary>
    private static readonly Dictionary<string, Func<ReferenceCase, ReferenceBehaviour>> Worded = new(
        StringComparer.Ordinal
    )
    {
        ["time to reach temperature"] = row =>
            TimeTo(row) switch
            {
                Arrival<TimeSpan>.Expected => ReferenceBehaviour.Figure,
                Arrival<TimeSpan>.Already => ReferenceBehaviour.Already,
                _ => ReferenceBehaviour.Never,
            },
    };

    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["Cragoe specific heat SI intercept"] = "coefficient, checked with 'specific heat, Cragoe'",
        ["Cragoe specific heat SI slope"] = "coefficient, checked with 'specific heat, Cragoe'",
        ["VCF coefficient K0 lubricating oil, 15 C basis (Table 53D/54D)"] = "zero, not a term of the code",
        ["VCF coefficient K1 lubricating oil, 15 C basis (Table 53D/54D)"] = "checked with the VCF rows",
        ["oil heat rate, US rule"] = "trade rule; the energy balance is used",
        ["tank heater rule, metric"] = "trade rule; the two disagree by 25 %",
        ["tank heater rule, US"] = "trade rule; the two disagree by 25 %",
        ["heater watt density guide"] = "guide figures that disagree by a factor of 4: the maker's limit counts",
        ["reservoir cooling rule"] = "trade rule; the maker's or a measured coefficient is used",
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

    /// <summary>Invented rows: 1 kW against 50 W/K holds 20 K above ambient; the balance decides each word.</summary>
    [Theory]
    [InlineData("time to reach temperature", 60, 20, 1000, "never", true)]
    [InlineData("time to reach temperature", 60, 20, 1000, "already", false)]
    [InlineData("time to reach temperature", 40, 20, 1000, "never / unreachable", true)]
    [InlineData("time to reach temperature", 10, 20, 1000, "unreachable", true)]
    [InlineData("time to reach temperature", 20, 20, 1000, "already", true)]
    [InlineData("time to reach temperature", 39, 20, 1000, "never", false)]
    [InlineData("time to reach temperature", 60, 20, -5, "invalid", true)]
    [InlineData("tank temperature after heating", 60, 20, -5, "impossible / rejected", true)]
    [InlineData("tank temperature after heating", 60, 20, 5, "impossible / rejected", false)]
    public void Words_mean_result_cases(string quantity, int target, int start, int watts, string word, bool agrees)
    {
        var row = ReferenceWords.Invented(
            quantity,
            $"m_kg=870; cp_kJ_kgK=1.95; UA_W_K=50; T0_C={start}; Tamb_C=20; P_W={watts}; T_target_C={target}; t_h=1",
            word
        );
        row.Agrees(Worded, Mapped).ShouldBe(agrees);
    }

    [Fact]
    public void Every_quantity_is_mapped_or_left_out_with_a_reason() =>
        ReferenceFolder.ShouldAnswerFor(
            File,
            quantity => Mapped.ContainsKey(quantity) || LeftOut.ContainsKey(quantity)
        );

    private static double WorkedExample(ReferenceCase row) =>
        VolumeCorrection
            .Api2004(
                ThermalExpansion.FromConstants(
                    row.Number("K0"),
                    row.Number("K1"),
                    0,
                    Density.FromKilogramsPerCubicMeter(610.6),
                    Density.FromKilogramsPerCubicMeter(1163.5),
                    new Source(SourceKind.Standard, "API MPMS 11.1-2004", "11.1.6.1")
                ),
                Rho(row, "rho60"),
                At(row)
            )
            .Factor.DecimalFractions;

    private static Arrival<TimeSpan> TimeTo(ReferenceCase row) =>
        Tank(row)
            .TimeTo(
                Celsius(row, "T_target_C"),
                Celsius(row, "T0_C"),
                Power.FromWatts(row.Number("P_W")),
                Celsius(row, "Tamb_C")
            );

    private static double After(ReferenceCase row) =>
        Tank(row)
            .TemperatureAfter(
                Celsius(row, "T0_C"),
                Power.FromWatts(row.Number("P_W")),
                Celsius(row, "Tamb_C"),
                TimeSpan.FromHours(row.Number("t_h"))
            )
            .DegreesCelsius;

    private static HeatedTank Tank(ReferenceCase row) =>
        HeatedTank.FromOil(Mass.FromKilograms(row.Number("m_kg")), Capacity(row), row.Number("UA_W_K"));

    private static OilPropertiesAt Cragoe(ReferenceCase row) =>
        OilProperties.FromRelativeDensity(row.Number("d")).At(At(row));

    private static OilPropertiesAt Oil(ReferenceCase row) =>
        OilProperties.FromDensityAt15(Rho(row, "rho15")).At(At(row));

    private static SpecificEntropy Capacity(ReferenceCase row) =>
        SpecificEntropy.FromKilojoulesPerKilogramKelvin(row.Number("cp_kJ_kgK"));

    private static Density Rho(ReferenceCase row, string name) => Density.FromKilogramsPerCubicMeter(row.Number(name));

    private static Temperature At(ReferenceCase row) =>
        row.Arguments.ContainsKey("t_F") ? Temperature.FromDegreesFahrenheit(row.Number("t_F")) : Celsius(row, "t_C");

    private static Temperature Celsius(ReferenceCase row, string name) =>
        Temperature.FromDegreesCelsius(row.Number(name));
}
