using CsCheck;
using Microsoft.Data.Analysis;
using OilCondition.Cleanliness;
using OilCondition.DataFrames;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.DataFrames;

/// <summary>Columns that are computed with agree with published values and, on drawn input, with the calls for one value.</summary>
public class ColumnTests
{
    private static readonly SaturationCurve Curve = PublishedSaturationCurves.TransformerMineralOil;

    private static readonly Gen<double?> Celsius = OrNull(Gen.Double[-70, 210]);
    private static readonly Gen<double?> Water = OrNull(Gen.Double[-5, 2000]);
    private static readonly Gen<double?> Centistokes = OrNull(
        Gen.Double[Math.Log(0.1), Math.Log(1e5)].Select(Math.Exp)
    );
    private static readonly Gen<double?> Counts = OrNull(Gen.Double[Math.Log(0.005), Math.Log(1e7)].Select(Math.Exp));

    public static TheoryData<string, string, string> Tabulated =>
        ReferenceFolder.Theory(
            "water.csv",
            row => row.Quantity.StartsWith("tabulated saturation", StringComparison.Ordinal)
        );

    /// <summary>Source: a printed table of a public technical page, row by row in tests/Reference/water.csv.</summary>
    [Theory]
    [MemberData(nameof(Tabulated))]
    public void Saturation_is_that_of_the_printed_table(string file, string id, string what)
    {
        what.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        var frame = WaterColumns.Saturation(Curve, Numbers("t", null, row.Number("t_C")), extrapolate: true);

        Number(frame, "saturation [mg/kg]", 0).ShouldBeNull();
        row.ShouldAgree(Number(frame, "saturation [mg/kg]", 1)!.Value);
    }

    /// <summary>Source: ISO 4406, table 1, in tests/Reference/iso4406.csv: a number goes up to and including its upper limit.</summary>
    [Fact]
    public void Scale_numbers_are_those_of_the_table()
    {
        var rows = ReferenceFolder.Rows("iso4406.csv").Where(row => row["up_to_and_incl_per_mL"].Length > 0).ToList();
        double[] upper = [.. rows.Select(row => double.Parse(row["up_to_and_incl_per_mL"], Invariant))];
        double[] above = [.. upper.Select(limit => limit * 1.0001)];
        double?[] counts = [.. upper.Concat(above).Select(count => (double?)count)];
        var frame = CleanlinessColumns.Codes(Numbers("4", counts), Numbers("6", counts), Numbers("14", counts));

        var scale = (Int32DataFrameColumn)frame["scale6"];
        for (var i = 0; i < rows.Count; i++)
        {
            scale[i].ShouldBe(int.Parse(rows[i]["scale_number"], Invariant));
            scale[rows.Count + i].ShouldBe(int.Parse(rows[i]["scale_number"], Invariant) + 1);
        }

        Text(frame, "code", frame.Rows.Count - 1).ShouldBe(">28/>28/>28");
    }

    /// <summary>Source: ISO 4406 worked codes, CLN-039 and CLN-040 of tests/Reference/cleanliness.csv.</summary>
    [Fact]
    public void Codes_are_those_of_the_worked_rows()
    {
        var frame = CleanlinessColumns.Codes(
            Numbers("4", 30000, 100, 10, null),
            Numbers("6", 2000, 30, 900, 1),
            Numbers("14", 60, 1, 1, 1)
        );

        ((StringDataFrameColumn)frame["code"]).ShouldBe(["22/18/13", "14/12/7", null, null]);
        ((StringDataFrameColumn)frame["codeReason"]).ShouldBe([
            null,
            null,
            "the counts rise with size, which cumulative counts cannot",
            null,
        ]);
    }

    /// <summary>Source: the worked examples of ASTM D2270, VIS-001, VIS-002 and VIS-004 of tests/Reference/viscosity.csv.</summary>
    [Fact]
    public void Viscosity_indexes_are_those_of_the_worked_examples()
    {
        var frame = ViscosityColumns.Index(
            Numbers("40", 73.30, 22.83, 73.50, 3, null, 5),
            Numbers("100", 8.86, 5.05, 8.86, 1.5, 4, 6)
        );

        ((Int32DataFrameColumn)frame["viscosity index"]).ShouldBe([92, 156, 92, null, null, null]);
        Text(frame, "indexReason", 3)!.ShouldContain("allowed: 2 to 2E+07 mm²/s");
        Text(frame, "indexReason", 4).ShouldBeNull();
        Text(frame, "indexReason", 5)!.ShouldContain("not above");
    }

    /// <summary>VIS-041 of tests/Reference/viscosity.csv: derived from ASTM D341.</summary>
    [Fact]
    public void Viscosity_at_another_temperature_is_that_of_the_reference_row()
    {
        var row = ReferenceFolder.Case("viscosity.csv", "VIS-041");
        var frame = ViscosityColumns.At(
            Numbers("40", 46, 46, 46),
            Numbers("100", 6.8, 6.8, 6.8),
            Numbers("t", 70, -10, null)
        );

        row.ShouldAgree(Number(frame, "viscosity [mm²/s]", 0)!.Value);
        Number(frame, "viscosity [mm²/s]", 1).ShouldBeNull();
        Text(frame, "viscosityReason", 1).ShouldBe("-10 °C is outside the measured 40 to 100 °C");
        Text(frame, "viscosityReason", 2).ShouldBeNull();
    }

    [Fact]
    public void Water_agrees_with_the_call_for_one_value_and_is_null_where_that_refuses_or_extrapolates() =>
        Gen.Select(Water, Celsius)
            .List[0, 40]
            .Holds(rows =>
            {
                var frame = WaterColumns.Split(
                    Curve,
                    Numbers("w", [.. rows.Select(row => row.Item1)]),
                    Numbers("t", [.. rows.Select(row => row.Item2)])
                );
                for (var i = 0; i < rows.Count; i++)
                {
                    var (water, celsius) = rows[i];
                    if (water is null || celsius is null)
                    {
                        Number(frame, "free [mg/kg]", i).ShouldBeNull();
                    }
                    else if (
                        water < 0
                        || celsius is < -60 or > 200
                        || !Curve.Covers(Temperature.FromDegreesCelsius(celsius.Value))
                    )
                    {
                        Number(frame, "free [mg/kg]", i).ShouldBeNull();
                        Text(frame, "splitReason", i).ShouldNotBeNull();
                    }
                    else
                    {
                        var state = Curve.Split(
                            MassFraction.FromPartsPerMillion(water.Value),
                            Temperature.FromDegreesCelsius(celsius.Value)
                        );
                        Number(frame, "saturation [mg/kg]", i)!
                            .Value.ShouldBe(state.Saturation.Content.PartsPerMillion, 1e-9 * 2000);
                        Number(frame, "dissolved [mg/kg]", i)!.Value.ShouldBe(state.Dissolved.PartsPerMillion, 1e-6);
                        Number(frame, "free [mg/kg]", i)!.Value.ShouldBe(state.Free.PartsPerMillion, 1e-6);
                        Number(frame, "relative saturation [%]", i)!
                            .Value.ShouldBe(state.RelativeSaturation.Percent, 1e-6);
                        Text(frame, "splitReason", i).ShouldBeNull();
                    }
                }
            });

    [Fact]
    public void Viscosity_agrees_with_the_call_for_one_value() =>
        Gen.Select(Centistokes, Centistokes, Celsius)
            .List[0, 40]
            .Holds(rows =>
            {
                var (at40, at100) = (
                    Numbers("40", [.. rows.Select(row => row.Item1)]),
                    Numbers("100", [.. rows.Select(row => row.Item2)])
                );
                var index = ViscosityColumns.Index(at40, at100);
                var other = ViscosityColumns.At(
                    at40,
                    at100,
                    Numbers("t", [.. rows.Select(row => row.Item3)]),
                    extrapolate: true
                );
                for (var i = 0; i < rows.Count; i++)
                {
                    ((Int32DataFrameColumn)index["viscosity index"])[i].ShouldBe(IndexOf(rows[i].Item1, rows[i].Item2));
                    Number(other, "viscosity [mm²/s]", i)
                        .ShouldBe(ViscosityOf(rows[i].Item1, rows[i].Item2, rows[i].Item3));
                }
            });

    [Fact]
    public void Codes_agree_with_the_call_for_one_value() =>
        Gen.Select(Counts, Counts, Counts)
            .List[0, 40]
            .Holds(rows =>
            {
                var frame = CleanlinessColumns.Codes(
                    Numbers("4", [.. rows.Select(row => row.Item1)]),
                    Numbers("6", [.. rows.Select(row => row.Item2)]),
                    Numbers("14", [.. rows.Select(row => row.Item3)])
                );
                for (var i = 0; i < rows.Count; i++)
                {
                    Text(frame, "code", i).ShouldBe(CodeOf(rows[i].Item1, rows[i].Item2, rows[i].Item3));
                }
            });

    [Fact]
    public void Sensor_readings_come_back_from_the_saturation_that_they_were_made_of()
    {
        double?[] totals = [10, 60, 120, 500];
        double?[] celsius = [40, 40, 60, 60];
        var split = WaterColumns.Split(Curve, Numbers("w", totals), Numbers("t", celsius));
        var sensed = WaterColumns.Sensed(Curve, split["relative saturation [%]"], Numbers("t", celsius));

        for (var i = 0; i < totals.Length; i++)
        {
            Number(sensed, "sensed dissolved [mg/kg]", i)!
                .Value.ShouldBe(Number(split, "dissolved [mg/kg]", i)!.Value, 1e-9);
        }

        Text(sensed, "sensedReason", 2).ShouldBeNull();
        Text(sensed, "sensedReason", 3)!.ShouldContain("least that the oil holds");
    }

    [Fact]
    public void Water_separates_where_it_saturates_the_oil()
    {
        var frame = WaterColumns.SeparationTemperature(Curve, Numbers("w", 121.761, null, 0, -1));

        // WTR-020 of tests/Reference/water.csv: 121.761 mg/kg at 40 °C.
        Number(frame, "separation temperature [°C]", 0)!.Value.ShouldBe(40, 1e-3);
        Text(frame, "separationReason", 1).ShouldBeNull();
        Text(frame, "separationReason", 2)!.ShouldContain("outside the curve");
        Text(frame, "separationReason", 3)!.ShouldContain("allowed: 0 to 500000 mg/kg");
    }

    [Fact]
    public void A_row_that_is_extrapolated_has_its_value_only_when_asked_for_and_says_so()
    {
        var curve = SaturationCurve.FromTwoPoints(
            "invented",
            Temperature.FromDegreesCelsius(20),
            MassFraction.FromPartsPerMillion(85),
            Temperature.FromDegreesCelsius(60),
            MassFraction.FromPartsPerMillion(310),
            Source.UserData("site laboratory")
        );
        var (water, celsius) = (Numbers("w", 180, 180), Numbers("t", 12, 40));

        var without = WaterColumns.Split(curve, water, celsius);
        var with = WaterColumns.Split(curve, water, celsius, extrapolate: true);

        Number(without, "free [mg/kg]", 0).ShouldBeNull();
        Text(without, "splitReason", 0).ShouldBe("12 °C is outside the curve, 20 to 60 °C");
        Number(with, "free [mg/kg]", 0)!.Value.ShouldBeGreaterThan(90);
        Text(with, "splitReason", 0).ShouldBe("extrapolated: 12 °C is outside the curve, 20 to 60 °C");
        Number(with, "free [mg/kg]", 1).ShouldBe(Number(without, "free [mg/kg]", 1));
    }

    [Fact]
    public void Numbers_that_are_none_and_bounds_give_null()
    {
        var frame = WaterColumns.Split(
            Curve,
            Numbers("w", double.NaN, double.PositiveInfinity, 50),
            Numbers("t", 40, 40, double.NaN)
        );

        ((DoubleDataFrameColumn)frame["free [mg/kg]"]).ShouldBe([null, null, null]);
        ((StringDataFrameColumn)frame["splitReason"]).ShouldAllBe(reason => reason!.Contains("allowed: "));
    }

    [Fact]
    public void Wrong_types_and_lengths_are_named_all_at_once()
    {
        var fault = Should
            .Throw<ArgumentException>(() =>
                CleanlinessColumns.Codes(
                    new SingleDataFrameColumn("a", [1f]),
                    new StringDataFrameColumn("b", ["2"]),
                    Numbers("c", 1, 2)
                )
            )
            .Message;

        fault.ShouldContain("'a' is Single");
        fault.ShouldContain("'b' is String");
        fault.ShouldContain("'c' has 2 rows");
        // Whole numbers are numbers, and a column without a value may be of any type.
        Text(
                CleanlinessColumns.Codes(
                    new Int32DataFrameColumn("a", [100, 100]),
                    new Int64DataFrameColumn("b", [30, 30]),
                    new DecimalDataFrameColumn("c", [1m, 1m])
                ),
                "code",
                0
            )
            .ShouldBe("14/12/7");
        WaterColumns.Saturation(Curve, new StringDataFrameColumn("t", 3)).Rows.Count.ShouldBe(3);
        WaterColumns.Saturation(Curve, Numbers("t")).Rows.Count.ShouldBe(0);
    }

    [Fact]
    public void Computed_columns_are_added_under_names_that_are_free()
    {
        var frame = new DataFrame(Numbers("t", 40, 50));
        var computed = WaterColumns.Saturation(Curve, frame["t"]);
        var once = frame.With(computed);
        var twice = once.With(computed, "again ");

        twice
            .Columns.Select(column => column.Name)
            .ShouldBe([
                "t",
                "saturation [mg/kg]",
                "saturationReason",
                "again saturation [mg/kg]",
                "again saturationReason",
            ]);
        frame.Columns.Count.ShouldBe(1);
        Should
            .Throw<ArgumentException>(() => once.With(computed))
            .Message.ShouldContain("saturation [mg/kg], saturationReason");
        Should
            .Throw<ArgumentException>(() => frame.With(WaterColumns.Saturation(Curve, Numbers("t", 1))))
            .Message.ShouldContain("1 rows");
    }

    private static readonly IFormatProvider Invariant = System.Globalization.CultureInfo.InvariantCulture;

    private static int? IndexOf(double? at40, double? at100) =>
        at40 > at100 && at40 is >= 2 and <= 2e7 && at100 >= 2
            ? ViscosityIndex
                .FromViscosities(
                    KinematicViscosity.FromCentistokes(at40.Value),
                    KinematicViscosity.FromCentistokes(at100.Value)
                )
                .Reported
            : null;

    private static double? ViscosityOf(double? at40, double? at100, double? celsius)
    {
        if (!(at40 > at100 && at100 >= 0.21 && celsius is >= -60 and <= 200))
        {
            return null;
        }

        var point = ViscosityTemperatureLine
            .FromTwoPoints(
                Temperature.FromDegreesCelsius(40),
                KinematicViscosity.FromCentistokes(at40!.Value),
                Temperature.FromDegreesCelsius(100),
                KinematicViscosity.FromCentistokes(at100!.Value)
            )
            .ViscosityAt(Temperature.FromDegreesCelsius(celsius.Value));
        return point.IsThicker || point.IsThinner ? null : point.Viscosity.Centistokes;
    }

    private static string? CodeOf(double? at4, double? at6, double? at14)
    {
        if (at4 is null || at6 is null || at14 is null)
        {
            return null;
        }

        try
        {
            return CleanlinessCode.FromCounts(at4.Value, at6.Value, at14.Value).ToString();
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static Gen<double?> OrNull(Gen<double> numbers) =>
        Gen.Select(Gen.Int[0, 9], numbers).Select((draw, number) => draw == 0 ? null : (double?)number);

    private static DoubleDataFrameColumn Numbers(string name, params double?[] values) => new(name, values);

    private static double? Number(DataFrame frame, string name, long row) =>
        ((PrimitiveDataFrameColumn<double>)frame[name])[row];

    private static string? Text(DataFrame frame, string name, long row) => ((StringDataFrameColumn)frame[name])[row];
}
