using OilCondition.Tests.Reference;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

/// <summary>steam.csv: every quantity is mapped to a library call or left out with a reason.</summary>
public class SteamReferenceTests
{
    private const string File = "steam.csv";

    /// <summary>NIST SP 811, conventional inch at 0 °C; the reference rows are worked with it.</summary>
    private const double PascalPerInch = 3386.389;

    private static readonly Dictionary<string, Func<ReferenceCase, double>> Mapped = new(StringComparer.Ordinal)
    {
        ["psat (IF97 eq. 30)"] = row => WaterVapour.PressureOverLiquid(At(row)).Megapascals,
        ["psat (IF97)"] = row => WaterVapour.SaturationPressure(At(row)).Pascals,
        ["psat ASHRAE Table 3"] = row => WaterVapour.SaturationPressure(At(row)).Pascals,
        ["IF97 region 4 validity lower bound"] = row => WaterVapour.PressureOverLiquid(At(row)).Pascals,
        ["IF97 region 4 validity upper bound"] = row => WaterVapour.PressureOverLiquid(At(row)).Megapascals,
        ["Tsat (IF97 eq. 31)"] = row =>
            WaterVapour.SaturationTemperature(Pressure.FromMegapascals(row.Number("p_MPa"))).Kelvins,
        ["p sublimation of ice"] = row => WaterVapour.PressureOverIce(At(row)).Pascals,
        ["latent heat of vaporisation hfg"] = row => WaterVapour.LatentHeat(At(row)).KilojoulesPerKilogram,
        ["saturated vapour specific volume"] = row => WaterVapour.SaturatedVapourVolume(At(row)).CubicMetersPerKilogram,
        ["absolute pressure from gauge vacuum"] = row => Gauge(row).AbsolutePressure.Pascals,
        ["boiling temperature of water from gauge vacuum"] = Boils,
        ["boiling temperature of water from gauge vacuum in kPa"] = Boils,
        ["boiling temperature of water, gauge vacuum at altitude"] = Boils,
        ["boiling temperature of water at altitude, no vacuum"] = Boils,
        ["gauge vacuum needed for water to boil"] = row =>
            GaugeVacuum.ToBoilAt(At(row), Atmosphere(row)).Reading.InchesOfMercury,
        ["gauge vacuum unit conversion"] = row =>
            row.Unit == "mbar" ? Gauge(row).Reading.Millibars : Gauge(row).Reading.MillimetersOfMercury,
        ["largest possible gauge vacuum at altitude"] = row => Atmosphere(row).InchesOfMercury,
        ["standard atmosphere pressure (geopotential altitude)"] = row => Atmosphere(row).Hectopascals,
        ["standard atmosphere pressure (geometric altitude)"] = row =>
            StandardAtmosphere.PressureAtGeometric(Length.FromMeters(row.Number("Z_m"))).Hectopascals,
        ["humidity ratio at saturation ASHRAE Table 2"] = row =>
            Air(row, 1).HumidityRatioAt(Total(row)).DecimalFractions,
        ["humidity ratio of air"] = row => Air(row, row.Number("RH")).HumidityRatioAt(Total(row)).DecimalFractions,
        ["water vapour partial pressure of air"] = row => Air(row, row.Number("RH")).VapourPressure.Pascals,
        ["dew point of air"] = row =>
            Air(row, row.Number("RH")).TryDewPoint(out var dewPoint)
                ? dewPoint.DegreesCelsius
                : throw new InvalidOperationException("no dew point"),
    };

    /// <summary>What a row's word must agree with: the result case that the library names.</summary>
    private static readonly Dictionary<string, Func<ReferenceCase, ReferenceBehaviour>> Worded = new(
        StringComparer.Ordinal
    )
    {
        ["dew point of air"] = row =>
            Air(row, row.Number("RH")).TryDewPoint(out _) ? ReferenceBehaviour.Figure : ReferenceBehaviour.Never,
        ["gauge vacuum needed for water to boil"] = row =>
            GaugeVacuum.ToBoilAt(At(row), Atmosphere(row)).Reading.Pascals > 0
                ? ReferenceBehaviour.Figure
                : ReferenceBehaviour.Already,
    };

    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["unit constant"] = "UnitsNet converts; the inch of mercury is checked with 'gauge vacuum unit conversion'",
        ["psat (Wagner-Pruss)"] = "the second opinion, not the library's equation",
        ["standard atmosphere temperature (geopotential altitude)"] = "users measure their air temperature",
        ["standard atmosphere pressure (ASHRAE form)"] = "another fit of the same atmosphere; ISO 2533 is used",
        ["psat ASHRAE eq. 6 (Hyland-Wexler)"] = "another equation, 170 ppm from IF97",
        ["humidity ratio W=0.621945 pw/(p-pw)"] =
            "checked through 'humidity ratio of air'; takes a bare vapour pressure",
        ["psychrometric example 1"] = "wet-bulb: plant hygrometers give relative humidity or dew point",
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

    /// <summary>Invented rows: the standard atmosphere at 1500 m is 24.97 inHg, so 25 inHg cannot be shown there.</summary>
    [Theory]
    [InlineData(
        "boiling temperature of water, gauge vacuum at altitude",
        "vacuum_inHg=25; H_m=1500",
        "impossible / rejected",
        true
    )]
    [InlineData(
        "boiling temperature of water, gauge vacuum at altitude",
        "vacuum_inHg=24.9; H_m=1500",
        "impossible / rejected",
        false
    )]
    [InlineData("absolute pressure from gauge vacuum", "vacuum_inHg=30; p_atm_Pa=101325", "invalid", true)]
    [InlineData("absolute pressure from gauge vacuum", "vacuum_inHg=-1; p_atm_Pa=101325", "rejected", true)]
    [InlineData("psat (IF97)", "t_C=-300", "invalid", true)]
    [InlineData("dew point of air", "t_C=25; RH=0", "none", true)]
    [InlineData("dew point of air", "t_C=25; RH=0.5", "none", false)]
    [InlineData("gauge vacuum needed for water to boil", "t_C=110; p_atm_Pa=101325", "no vacuum needed", true)]
    [InlineData("gauge vacuum needed for water to boil", "t_C=60; p_atm_Pa=101325", "no vacuum needed", false)]
    public void Words_mean_result_cases(string quantity, string inputs, string word, bool agrees)
    {
        var row = ReferenceWords.Invented(quantity, inputs, word);
        row.Agrees(Worded, Mapped).ShouldBe(agrees);
    }

    [Fact]
    public void Every_quantity_is_mapped_or_left_out_with_a_reason() =>
        ReferenceFolder.ShouldAnswerFor(File, quantity => Mapped.ContainsKey(quantity) || IsLeftOut(quantity));

    private static bool IsLeftOut(string quantity) =>
        LeftOut.ContainsKey(quantity)
        || quantity.StartsWith("IF97 region 4 coefficient", StringComparison.Ordinal)
        || quantity.StartsWith("Wagner-Pruss coefficient", StringComparison.Ordinal)
        || quantity.StartsWith("ice sublimation coefficient", StringComparison.Ordinal);

    private static double Boils(ReferenceCase row) => Gauge(row).BoilingPoint.DegreesCelsius;

    private static Temperature At(ReferenceCase row) =>
        row.Arguments.ContainsKey("T_K") ? Temperature.FromKelvins(row.Number("T_K"))
        : row.Arguments.ContainsKey("t_F") ? Temperature.FromDegreesFahrenheit(row.Number("t_F"))
        : Temperature.FromDegreesCelsius(row.Number("t_C"));

    private static Pressure Atmosphere(ReferenceCase row) =>
        row.Arguments.ContainsKey("H_m") ? StandardAtmosphere.PressureAt(Length.FromMeters(row.Number("H_m")))
        : row.Arguments.ContainsKey("p_atm_Pa") ? Pressure.FromPascals(row.Number("p_atm_Pa"))
        : StandardAtmosphere.SeaLevel;

    private static GaugeVacuum Gauge(ReferenceCase row) =>
        GaugeVacuum.FromReading(
            row.Arguments.ContainsKey("vacuum_kPa")
                ? Pressure.FromKilopascals(row.Number("vacuum_kPa"))
                : Pressure.FromPascals(row.Number("vacuum_inHg") * PascalPerInch),
            Atmosphere(row)
        );

    private static Pressure Total(ReferenceCase row) => Pressure.FromPascals(row.Number("p_Pa"));

    private static HumidAir Air(ReferenceCase row, double relativeHumidity) =>
        HumidAir.FromRelativeHumidity(At(row), RelativeHumidity.FromPercent(100 * relativeHumidity));
}
