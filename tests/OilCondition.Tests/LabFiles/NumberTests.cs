using OilCondition.LabFiles;

namespace OilCondition.Tests.LabFiles;

/// <summary>Numbers as laboratories write them, and what is refused because it may be two numbers.</summary>
public class NumberTests
{
    private static LabFileResult Read(string cell, char delimiter, string map = "{}") =>
        LabFile.Read(
            new StringReader(
                $"Machine,Sample No,Date,Water (ppm)\nM1,S1,2026-03-14,\n".Replace(',', delimiter).TrimEnd('\n')
                    + $"\"{cell}\"\n"
            ),
            "lab.csv",
            ColumnMap.Parse(map)
        );

    private static double? Value(LabFileResult file) =>
        file.SamplesOf("M1").Single().Readings.TryGetValue(Measurands.WaterContent, out var reading)
            ? reading.Value
            : null;

    [Theory]
    [InlineData("1,234", ',', 1234d)]
    [InlineData("12,345.6", ';', 12345.6)]
    [InlineData("123,456,789", ';', null)] // a number, and no plausible one
    [InlineData("123,456", ',', 123456d)]
    [InlineData("12 345", ';', 12345d)]
    [InlineData("12\u00A0345,5", ';', null)] // two signs, of which none is the decimal point
    [InlineData("12'345.5", ';', 12345.5)]
    [InlineData(" 55 ", ',', 55d)]
    [InlineData("+55", ',', 55d)]
    [InlineData("1.5E2", ',', 150d)]
    [InlineData("1,234", ';', null)] // may be 1.234
    [InlineData("1,23", ',', null)]
    [InlineData("0,123", ',', null)]
    [InlineData("1234,567", ',', null)]
    [InlineData("1,2345", ',', null)]
    [InlineData("1.234.5", ',', null)]
    [InlineData("NaN", ',', null)]
    [InlineData("Infinity", ',', null)]
    [InlineData("1e999", ',', null)]
    [InlineData("0x10", ',', null)]
    [InlineData("5-", ',', null)]
    [InlineData("(5)", ',', null)]
    [InlineData("<", ',', null)]
    [InlineData("５５", ',', null)] // full-width digits
    public void With_a_decimal_point(string cell, char delimiter, double? expected)
    {
        var file = Read(cell, delimiter);

        Value(file).ShouldBe(expected);
        file.Problems.Count.ShouldBe(expected is null ? 1 : 0);
    }

    [Theory]
    [InlineData("0,48", 0.48)]
    [InlineData("1.234", 1234d)]
    [InlineData("1.234,5", 1234.5)]
    [InlineData("12 345,5", 12345.5)]
    [InlineData("1.2", null)]
    public void With_a_decimal_comma_that_the_map_states(string cell, double? expected) =>
        Value(Read(cell, ';', """{ "decimalSeparator": "," }""")).ShouldBe(expected);

    [Fact]
    public void A_comma_that_is_decimal_in_one_cell_groups_thousands_in_none()
    {
        var text = "Machine,Date,Water (ppm),AN\nM1,2026-03-14,\"1,234\",0.1\nM1,2026-03-15,55,\"0,15\"\n";
        var file = LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default);

        file.Problems.Select(problem => problem.Text).ShouldBe(["1,234", "0,15"]);
        file.Problems[0].Reason.ShouldContain("state decimalSeparator in the column map");
        file.Problems[1].Reason.ShouldContain("state the other one in the column map if that is meant");
    }

    [Theory]
    [InlineData("NA")]
    [InlineData("n/a")]
    [InlineData("N.A.")]
    [InlineData("#N/A")]
    [InlineData("-")]
    [InlineData("--")]
    [InlineData("–")]
    [InlineData("Not tested")]
    [InlineData("")]
    [InlineData("pending")] // by the map
    public void What_says_that_there_is_no_reading_is_blank(string cell)
    {
        var file = Read(cell, ',', """{ "blank": ["pending"] }""");

        file.Problems.ShouldBeEmpty();
        file.Cells.Blank.ShouldBe(1);
        file.Columns[3].BlankCount.ShouldBe(1);
    }

    [Theory]
    [InlineData("ND")]
    [InlineData("<LOD")]
    [InlineData("not detected")]
    public void Not_detected_is_a_bound_where_the_map_says_which(string cell)
    {
        var map =
            """{ "columns": [ { "names": ["Water"], "measurand": "water-content", "unit": "ppm", "detectionLimit": 10 } ] }""";
        var file = Read(cell, ',', map);

        file.SamplesOf("M1").Single().Readings[Measurands.WaterContent].ShouldBe(new Reading(10, Qualifier.LessThan));
        file.Columns[3].BoundedCount.ShouldBe(1);
        Read(cell, ',').Problems.Single().Reason.ShouldContain("states no detection limit");
    }
}
