using OilCondition.Viscosity;
using UnitsNet;

namespace DeskCalculations;

/// <summary>Viscosity at start-up, index and grade, what a pump can take, blends and dilution.</summary>
internal static class Thickness
{
    public static void Write(Sheet sheet)
    {
        sheet.Topic("Viscosity");
        var line = Line(46, 6.8);
        sheet.Line("oil", line);
        sheet.Line("  at start-up, -10 °C", line.ViscosityAt(Celsius(-10)));
        var pump = new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(40), Kv(1000));
        sheet.Line("pump", pump);
        sheet.Line("  full flow from", pump.ColdestAtFullFlow(line));
        sheet.Line("  at -10 °C", pump.FlowAt(line, Celsius(-10)));
        sheet.Line("index of 73.3 and 8.86 mm²/s", ViscosityIndex.FromViscosities(Kv(73.3), Kv(8.86)));
        sheet.Line("grade check", IsoViscosityGrade.FromNumber(46).Check(Kv(52.4)));
        sheet.Line(
            "  grade of 52.4 mm²/s",
            IsoViscosityGrade.TryFind(Kv(52.4), out var grade)
                ? grade
                : $"none; nearest {IsoViscosityGrade.Nearest(Kv(52.4))}"
        );
        var tenth = Ratio.FromPercent(10);
        sheet.Line(
            "VG 46 with 10 % of VG 220, 40 °C",
            $"{ViscosityBlend.OfTwo(Kv(46), Kv(220), tenth).Centistokes:0.0} mm²/s"
        );
        var blend = ViscosityBlend.OfLines((Ratio.FromPercent(90), line), (tenth, Line(220, 19)));
        sheet.Line("  the blend's own line", blend);
        var uncertain = Ratio.FromPercent(1);
        sheet.Line(
            "fuel in a diesel's oil",
            OilDilution.Estimate(Kv(150), Kv(3), Kv(110), uncertain, Ratio.FromPercent(5), uncertain, 0.95)
        );
        var fuel = ViscosityTemperatureLine.OfThinLiquid(Celsius(20), Kv(4.5), Celsius(60), Kv(1.9));
        sheet.Line("  the fuel itself at 100 °C", fuel.ViscosityAt(Celsius(100)));
        var seconds = SayboltViscosity.ToSayboltSeconds(Kv(20.6), Temperature.FromDegreesFahrenheit(100));
        sheet.Line("20.6 mm²/s at 100 °F", $"{seconds:0.0} SUS");
        sheet.Line("caution", "fuel lowers the flash point: fire and explosion; ask the maker");
    }

    private static ViscosityTemperatureLine Line(double at40, double at100) =>
        ViscosityTemperatureLine.FromTwoPoints(Celsius(40), Kv(at40), Celsius(100), Kv(at100));

    private static KinematicViscosity Kv(double centistokes) => KinematicViscosity.FromCentistokes(centistokes);

    private static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
