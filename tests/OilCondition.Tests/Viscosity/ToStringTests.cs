using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

/// <summary>What the results of the room print.</summary>
public class ToStringTests
{
    private static readonly ViscosityTemperatureLine Line = ViscosityTemperatureLine.FromTwoPoints(
        C(40),
        Kv(46),
        C(100),
        Kv(6.8)
    );

    private static readonly PumpViscosityLimit Pump = new(VolumeFlow.FromLitersPerMinute(40), Kv(1000));

    public static TheoryData<string, object> Results() =>
        new()
        {
            { "46 mm²/s at 40 °C, 6.8 mm²/s at 100 °C", Line },
            { "46 mm²/s at 40 °C", Line.ViscosityAt(C(40)) },
            // viscosity.csv: 1474.3 mm²/s at −10 °C, 1000 mm²/s at −6.07 °C.
            { "1474 mm²/s at -10 °C, extrapolated", Line.ViscosityAt(C(-10)) },
            { "1000 mm²/s at -6.1 °C, extrapolated", Pump.ColdestAtFullFlow(Line) },
            { "below 10000000 mm²/s at -60 °C, extrapolated", Line.TemperatureFor(Kv(1e7)) },
            { "above 0.3 mm²/s at 200 °C, extrapolated", Line.TemperatureFor(Kv(0.3)) },
            { "40 L/min up to 1000 mm²/s", Pump },
            { "40 L/min, full flow: 46 mm²/s at 40 °C", Pump.FlowAt(Line, C(40)) },
            { "27.1 L/min, reduced: 1474 mm²/s at -10 °C, extrapolated", Pump.FlowAt(Line, C(-10)) },
            { "VG 46", IsoViscosityGrade.FromNumber(46) },
            {
                "52.4 mm²/s at 40 °C: too thick for VG 46, 13.9 % above its midpoint",
                IsoViscosityGrade.FromNumber(46).Check(Kv(52.4))
            },
            {
                "43 mm²/s at 40 °C: in VG 46, 6.52 % below its midpoint",
                IsoViscosityGrade.FromNumber(46).Check(Kv(43))
            },
            // ASTM D2270, worked example.
            { "92", ViscosityIndex.FromViscosities(Kv(73.3), Kv(8.86)) },
            { "4.7 % (4.3 to 5.2 %)", Dilution(110) },
            { "not explained by this diluent", Dilution(180) },
        };

    [Theory]
    [MemberData(nameof(Results), DisableDiscoveryEnumeration = true)]
    public void A_result_prints_itself(string text, object result) => result.ToString().ShouldBe(text);

    /// <summary>A share whose interval reaches 0 says that it may be none.</summary>
    [Fact]
    public void A_share_that_may_be_none_says_so() =>
        Dilution(149).ToString().ShouldEndWith(", not distinguishable from none");

    private static OilDilution Dilution(double mixture) =>
        OilDilution.Estimate(
            Kv(150),
            Kv(3),
            Kv(mixture),
            Ratio.FromPercent(1),
            Ratio.FromPercent(5),
            Ratio.FromPercent(1),
            0.95
        );

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static KinematicViscosity Kv(double centistokes) => KinematicViscosity.FromCentistokes(centistokes);
}
