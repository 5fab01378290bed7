using System.Text.RegularExpressions;
using DeskCalculations;

namespace OilCondition.Tests.Examples;

/// <summary>The desk sheet of the invented station, against figures worked by hand or cited.</summary>
public partial class DeskCalculationsTests
{
    private static readonly string[] Lines = Desk.Sheet().Split('\n');

    [Fact]
    public void The_sheet_is_at_most_100_columns_wide_and_says_that_it_is_invented()
    {
        Lines.Max(line => line.Length).ShouldBeLessThanOrEqualTo(100);
        Lines[0].ShouldContain("INVENTED");
        Lines.Count(line => line.StartsWith("  caution", StringComparison.Ordinal)).ShouldBe(5);
    }

    /// <summary>Figures as people write them: no powers of ten, no more than five digits after the point.</summary>
    [Fact]
    public void No_figure_is_printed_as_a_machine_would() => Lines.ShouldAllBe(line => !MachineNumber().IsMatch(line));

    [GeneratedRegex(@"\dE[+-]?\d|\.\d{6}", RegexOptions.None, 1000)]
    private static partial Regex MachineNumber();

    [Theory]
    // B = lg(310/85)/(1/293.15 − 1/333.15) = 1372.0 K, A = lg 85 + B/293.15 = 6.610; S at 12 °C = 10^(6.6097 − 1372.0/285.15) = 62.8.
    [InlineData("curve from two measurements", "bearing oil: log10 S = 6.61 - 1372 K/T, 20 to 60 °C")]
    [InlineData("the same at standstill, 12 °C", "180 mg/kg at 12 °C: 60 dissolved, 120 free, extrapolated")]
    [InlineData("cool-down", "55 to 12 °C: 120 mg/kg separates")]
    // 117.2e-6 × 2000 L × 870/998.2 = 0.204 L.
    [InlineData("free water in 2000 L then", "0.20 L")]
    // 180 mg/kg: T = 1372.0/(6.6097 − lg 180) = 1372.0/4.3544 = 315.1 K.
    [InlineData("so", "water separates below 41.9 °C")]
    // ISO 2533 at 500 m: 954.6 hPa; less 24 × 3386.389 Pa; IF97 52.8 °C as in docs/water.md.
    [InlineData("gauge at 24 inHg", "14.2 kPa absolute, 81.3 kPa below atmosphere: water boils at 52.8 °C")]
    // −(870 × 1950/60) ln(1 − 60 × 40/6000) = 14 444 s; 2 kW over 60 W/K hold 33.3 K above 20 °C.
    [InlineData("20 to 60 °C with 6 kW", "expected 4.01 h")]
    [InlineData("with 2 kW", "never on this course")]
    [InlineData("2 kW holds", "53.3 °C")]
    // 870 × 1950 × 40/10 800 = 6283 W.
    [InlineData("870 kg by 40 K in 3 h, no losses", "6.3 kW")]
    // viscosity.csv: 1474.3 mm²/s at −10 °C, 1000 at −6.07 °C; 40 × 1000/1474.3 = 27.1 L/min.
    [InlineData("at start-up, -10 °C", "1474 mm²/s at -10 °C, extrapolated")]
    [InlineData("full flow from", "1000 mm²/s at -6.1 °C, extrapolated")]
    [InlineData("at -10 °C", "27.1 L/min, reduced: 1474 mm²/s at -10 °C, extrapolated")]
    // ASTM D2270, worked example.
    [InlineData("index of 73.3 and 8.86 mm²/s", "92")]
    // 52.4/46 = 1.139; the grade ends at 50.6.
    [InlineData("grade check", "52.4 mm²/s at 40 °C: too thick for VG 46, 13.9 % above its midpoint")]
    [InlineData("VG 46 with 10 % of VG 220, 40 °C", "52.6 mm²/s")]
    // 100, 30 and 2 per mL: 80 < 100 ≤ 160, 20 < 30 ≤ 40, 1.3 < 2 ≤ 2.5.
    [InlineData("counts give the code", "14/12/8")]
    // cleanliness.csv: 20 counted, 12.217 to 30.888.
    [InlineData("95 % by counting alone", "12.2 to 30.9 particles")]
    [InlineData("in scale numbers", "7-9")]
    // AS4059 table 2 by eye: 19462 < 38000 ≤ 38924, 1731 < 3400 ≤ 3462, 153 < 300 ≤ 306.
    [InlineData("AS4059, exact limits", "7B/6C/5D")]
    [InlineData("beside 6B-D", "Exceeded")]
    // 5e6/(20 000 × 0.995) = 251.3 per mL; 1000/(20 × 0.995) ln(19 748.7/748.7) = 164.5 min.
    [InlineData("20000 to 1000 per mL", "expected 2.74 h")]
    [InlineData("to 250 per mL", "never on this course")]
    // 5e6/(640 × 0.995) mL/min.
    [InlineData("flow that holds 640 per mL", "7.85 L/min")]
    [InlineData("filter for 7.8 L/min", "none is enough: more flow")]
    // Guide: gear oil beyond 680 mm²/s. IF97: 23.4 hPa at 20 °C; 40 (60 − 23.39)/(60 − 17.06) = 34.1.
    [InlineData("oil of 1000 mm²/s bears", "0.9 W/cm²")]
    [InlineData("vacuum pump", "liquid ring 40 m³/h, ring water at 20 °C, not below 23.4 hPa")]
    [InlineData("at 60 hPa it swallows", "34.1 m³/h")]
    // 55.5 mol/h of vapour and 17.3 of air: 45.8 of 60 hPa.
    [InlineData("with 1 kg/h of vapour", "needs 29.6 of 40 m³/h at 60 hPa, 45.8 hPa of it vapour: vapour condenses")]
    // 50.5 L a day at 0.6 · 17.3 g/m³; 0.3 · 700 g.
    [InlineData("water with it", "0.52 g a day at most")]
    [InlineData("desiccant breather", "0.7 kg of desiccant, holds 210 g of water")]
    // (0.76/2.25)^(1/3) = 0.697; 1.01 · 400/32; 60 g · 0.5/0.05.
    [InlineData("used at 1.01 bar", "70 %")]
    [InlineData("at a cold start, 400 mm²/s", "12.6 bar")]
    [InlineData("on 0.05 g/h of dirt", "600 h")]
    public void A_line_says_what_was_worked_by_hand(string label, string answer) =>
        Desk.Sheet()
            .Replace("\n        ", "", StringComparison.Ordinal) // an answer on a line of its own
            .Split('\n')
            .Where(line => line.Length > 38 && line[..38].Trim() == label)
            .Select(line => line[38..].Trim())
            .ShouldContain(answer);
}
