using System.Globalization;
using OilCondition.Tests.Reference;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

/// <summary>viscosity.csv: every quantity is mapped to a library call or left out with a reason.</summary>
public class ViscosityReferenceTests
{
    private const string File = "viscosity.csv";

    private static readonly Dictionary<string, Func<ReferenceCase, double>> Numbers = new(StringComparer.Ordinal)
    {
        ["viscosity_index"] = row => Index(row).Reported,
        ["viscosity_index_unrounded"] = row => Index(row).Unrounded,
        ["viscosity_index_rounding"] = row => ViscosityIndex.Round(First(row, "vi")),
        ["kv100_for_vi100"] = row => ViscosityIndex.ViscosityAt100(Kv(row, "kv40"), 100).Centistokes,
        ["kv_at_t"] = row => Line(row).ViscosityAt(Celsius(row, "t")).Viscosity.Centistokes,
        ["t_for_kv"] = row => Line(row).TemperatureFor(Kv(row, "kv")).Temperature.DegreesCelsius,
        ["Z_simplified"] = row => Z(row, D341Form.Simplified),
        ["Z_full"] = row => Z(row, D341Form.General),
        ["kv_from_Z"] = ViscosityFromZ,
        ["kv_to_sus_100F"] = row => Saybolt(row, 100),
        ["kv_to_sus_210F"] = row => Saybolt(row, 210),
        ["kv_to_sus_t"] = row => Saybolt(row, First(row, "t")),
        ["blend_kv"] = Blend,
        ["blend_kv_wright"] = Wright,
        ["fuel_fraction_from_kv"] = row =>
            OilDilution
                .Estimate(
                    Kv(row, "kv_oil"),
                    Kv(row, "kv_fuel"),
                    Kv(row, "kv_mix"),
                    Ratio.Zero,
                    Ratio.Zero,
                    Ratio.Zero,
                    0.95
                )
                .Fraction.Percent,
        ["dynamic_viscosity"] = row =>
            (Kv(row, "kv") * Density.FromKilogramsPerCubicMeter(First(row, "rho"))).PascalSeconds,
    };

    /// <summary>Rows whose value is a word or a pair of numbers.</summary>
    private static readonly Dictionary<string, Action<ReferenceCase>> Words = new(StringComparer.Ordinal)
    {
        ["LH_interpolated"] = BasicValues,
        ["LH_above_70"] = BasicValues,
        ["iso_vg_grade"] = row =>
        {
            IsoViscosityGrade.TryFind(Kv(row, "kv40"), out var grade);
            (grade?.ToString() ?? "none").ShouldBe(row.Value);
        },
        ["iso_vg_limits"] = row =>
        {
            var grade = IsoViscosityGrade.FromNumber((int)First(row, "grade"));
            var limits = row.Value.Split("..");
            grade.Lowest.Centistokes.ShouldBe(Read(limits[0]));
            grade.Highest.Centistokes.ShouldBe(Read(limits[1]));
        },
    };

    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["LH_quadratic"] = "the appendix's approximation of the table: a second route in ViscosityIndexTests",
        ["refutas_index"] = "an index form from memory beside the standard's own",
        ["agma_number"] = "older numbering of another body, common practice; no part of ISO 3448",
        ["kv_change"] = "a difference in per cent against the new oil: belongs to limits",
    };

    /// <summary>What the library makes of a row.</summary>
    internal static double Answer(ReferenceCase row) => Numbers[row.Quantity](row);

    public static TheoryData<string, string, string> NumberRows() =>
        ReferenceFolder.Theory(File, row => Numbers.ContainsKey(row.Quantity));

    public static TheoryData<string, string, string> WordRows() =>
        ReferenceFolder.Theory(File, row => Words.ContainsKey(row.Quantity));

    [Theory]
    [MemberData(nameof(NumberRows))]
    [Trait("Category", "Reference")]
    public void Agrees_with_its_source(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        if (row.TryNumber(out _))
        {
            row.ShouldAgree(Numbers[row.Quantity](row));
        }
        else
        {
            Should.Throw<ArgumentException>(() => Numbers[row.Quantity](row), $"{id}: {row.Value}");
        }
    }

    [Theory]
    [MemberData(nameof(WordRows))]
    [Trait("Category", "Reference")]
    public void Says_what_its_source_says(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        Words[row.Quantity](row);
    }

    [Fact]
    public void Every_quantity_is_mapped_or_left_out_with_a_reason() =>
        ReferenceFolder.ShouldAnswerFor(
            File,
            quantity => Numbers.ContainsKey(quantity) || Words.ContainsKey(quantity) || LeftOut.ContainsKey(quantity)
        );

    private static ViscosityIndex Index(ReferenceCase row) =>
        ViscosityIndex.FromViscosities(Kv(row, "kv40"), Kv(row, "kv100"));

    private static void BasicValues(ReferenceCase row)
    {
        var y = First(row, "kv100");
        var index = ViscosityIndex.FromViscosities(KinematicViscosity.FromCentistokes(y * 10), Kv(row, "kv100"));
        foreach (var part in row.Value.Split(';', StringSplitOptions.TrimEntries))
        {
            var actual = part[0] == 'L' ? index.L : index.H;
            (row with { Value = part[2..] }).ShouldAgree(actual.Centistokes);
        }
    }

    /// <summary>Z of a viscosity, as the public line shows it: log10 log10 Z = A − B log10 T.</summary>
    private static double Z(ReferenceCase row, D341Form form)
    {
        var (cold, hot) = (Temperature.FromDegreesCelsius(40), Temperature.FromDegreesCelsius(100));
        var line =
            form == D341Form.General
                ? ViscosityTemperatureLine.OfThinLiquid(cold, Kv(row, "kv") * 10, hot, Kv(row, "kv"))
                : ViscosityTemperatureLine.FromTwoPoints(cold, Kv(row, "kv") * 10, hot, Kv(row, "kv"));
        return Math.Pow(10, Math.Pow(10, line.A - line.B * Math.Log10(373.15)));
    }

    private static double ViscosityFromZ(ReferenceCase row)
    {
        var line = ViscosityTemperatureLine.FromTwoPoints(
            Temperature.FromDegreesCelsius(0),
            KinematicViscosity.FromCentistokes(100),
            Temperature.FromDegreesCelsius(150),
            KinematicViscosity.FromCentistokes(0.3)
        );
        var kelvins = Math.Pow(10, (line.A - Math.Log10(Math.Log10(First(row, "Z")))) / line.B);
        return line.ViscosityAt(Temperature.FromKelvins(kelvins)).Viscosity.Centistokes;
    }

    private static double Blend(ReferenceCase row)
    {
        var fractions = row.Arguments["f"].Split(' ')[0].Split(',').Select(Read).ToArray();
        var viscosities = row.Arguments["kv"].Split(' ')[0].Split(',').Select(Read).ToArray();
        fractions.Length.ShouldBe(2);
        return ViscosityBlend
            .OfTwo(
                KinematicViscosity.FromCentistokes(viscosities[0]),
                KinematicViscosity.FromCentistokes(viscosities[1]),
                Ratio.FromDecimalFractions(fractions[1])
            )
            .Centistokes;
    }

    /// <summary>Parts as <c>f=0.5 kv40=32 kv100=5.4; f=…</c>, the temperature last.</summary>
    private static double Wright(ReferenceCase row)
    {
        var parts = row
            .Inputs.Split(';', StringSplitOptions.TrimEntries)
            .Where(text => text.StartsWith("f=", StringComparison.Ordinal))
            .Select(text => text.Split(' ').Take(3).Select(pair => Read(pair.Split('=')[1])).ToArray())
            .Select(part =>
                (
                    Ratio.FromDecimalFractions(part[0]),
                    ViscosityTemperatureLine.FromTwoPoints(
                        Temperature.FromDegreesCelsius(40),
                        KinematicViscosity.FromCentistokes(part[1]),
                        Temperature.FromDegreesCelsius(100),
                        KinematicViscosity.FromCentistokes(part[2])
                    )
                )
            )
            .ToArray();
        return ViscosityBlend.OfLines(parts).ViscosityAt(Celsius(row, "t")).Viscosity.Centistokes;
    }

    private static double Saybolt(ReferenceCase row, double fahrenheit) =>
        SayboltViscosity.ToSayboltSeconds(Kv(row, "kv"), Temperature.FromDegreesFahrenheit(fahrenheit));

    private static ViscosityTemperatureLine Line(ReferenceCase row) =>
        ViscosityTemperatureLine.FromTwoPoints(Celsius(row, "t1"), Kv(row, "kv1"), Celsius(row, "t2"), Kv(row, "kv2"));

    private static Temperature Celsius(ReferenceCase row, string name) =>
        Temperature.FromDegreesCelsius(First(row, name));

    private static KinematicViscosity Kv(ReferenceCase row, string name) =>
        KinematicViscosity.FromCentistokes(First(row, name));

    private static double First(ReferenceCase row, string name) =>
        Read(row.Arguments[name].Replace("VG ", "", StringComparison.Ordinal).Split(' ')[0]);

    private static double Read(string number) => double.Parse(number, CultureInfo.InvariantCulture);
}
