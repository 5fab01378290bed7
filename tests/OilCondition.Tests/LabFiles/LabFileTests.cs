using CsCheck;
using OilCondition.LabFiles;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.LabFiles;

public class LabFileTests
{
    private static readonly ColumnMap German = ColumnMap.Parse(
        """
        { "delimiter": ";", "decimalSeparator": ",", "dateFormats": ["dd.MM.yyyy"], "offsetFromUtc": "+01:00",
          "columns": [ { "names": ["Wasser"], "measurand": "water-content", "unit": "ppm", "detectionLimit": 10 } ] }
        """
    );

    private static LabFileResult Read(string text, ColumnMap? map = null) =>
        LabFile.Read(new StringReader(text), "lab.csv", map ?? ColumnMap.Default);

    [Fact]
    public void A_plain_file_is_read_with_the_units_of_its_headers()
    {
        var file = Read(
            "Machine,Sample No,Sampled,Water (%),Oil temperature [°F],Visc 40C (SUS)\nM1,S1,2026-03-14,0.0123,104,214.24\n"
        );

        var sample = file.SamplesOf("M1").Single();
        sample.TakenAt.ShouldBe(new DateTimeOffset(2026, 3, 14, 0, 0, 0, TimeSpan.Zero));
        sample.Readings[Measurands.WaterContent].Value.ShouldBe(123, 1e-9);
        sample.Readings[Measurands.OilTemperature].Value.ShouldBe(40, 1e-9);
        sample.Readings[Measurands.Viscosity40].Value.ShouldBe(46, 0.03);
        file.Problems.ShouldBeEmpty();
    }

    [Fact]
    public void Decimal_commas_local_dates_byte_order_mark_and_carriage_returns()
    {
        var bytes = new System.Text.UTF8Encoding(true)
            .GetPreamble()
            .Concat(
                System.Text.Encoding.UTF8.GetBytes("Machine;Sample No;Date;Wasser;AN\r\nM1;S1;14.03.2026;ND;0,15\r\n")
            );
        using var reader = new StreamReader(new MemoryStream([.. bytes]));
        var file = LabFile.Read(reader, "lab.csv", German);

        var sample = file.SamplesOf("M1").Single();
        sample.TakenAt.ShouldBe(new DateTimeOffset(2026, 3, 14, 0, 0, 0, TimeSpan.FromHours(1)));
        sample.Readings[Measurands.AcidNumber].Value.ShouldBe(0.15);
        sample.Readings[Measurands.WaterContent].ShouldBe(new Reading(10, Qualifier.LessThan));
    }

    [Theory]
    [InlineData("<10", 10, Qualifier.LessThan)]
    [InlineData("< 10", 10, Qualifier.LessThan)]
    [InlineData(">200", 200, Qualifier.GreaterThan)]
    [InlineData("≥200", 200, Qualifier.GreaterThan)]
    [InlineData("~50", 50, Qualifier.Approximately)]
    [InlineData("1e2", 100, Qualifier.None)]
    public void Qualifiers(string cell, double value, Qualifier qualifier) =>
        Read($"Machine,Sample No,Date,Water\nM1,S1,2026-03-14,{cell}\n")
            .SamplesOf("M1")
            .Single()
            .Readings[Measurands.WaterContent]
            .ShouldBe(new Reading(value, qualifier));

    [Fact]
    public void A_cleanliness_code_in_a_count_column_stands_for_about_its_upper_limit()
    {
        var map = ColumnMap.Parse(
            """{ "columns": [ { "names": ["ISO 6"], "measurand": "particles-6um", "unit": "iso-4406" } ] }"""
        );

        Read("Machine,Sample No,Date,ISO 6\nM1,S1,2026-03-14,16\n", map)
            .SamplesOf("M1")
            .Single()
            .Readings[Measurands.Particles6]
            .ShouldBe(new Reading(640, Qualifier.Approximately));
    }

    [Fact]
    public void Every_bad_cell_is_reported_with_its_place_and_the_good_ones_are_kept()
    {
        var file = Read(
            "Machine,Sample No,Date,Water,AN,Temperature,Remark\n"
                + "M1,S1,2026-03-14,-12,0.1,40,ok\n"
                + "\n"
                + "M1,S2,2026-03-15,55,zero,2000,\"two\nlines\"\n"
                + "M1,S3,2026-02-30,55,0.1,40,\n"
                + "M1,S4,2026-03-17,ND,0.2,,-\n"
                + "M1,,2026-03-18,55,0.1,40,\n"
                + "M1,S6,2026-03-19,55,0.1\n"
        );

        file.Problems.Select(problem => (problem.Line, problem.Column, problem.Text))
            .ShouldBe([
                (2, "Water", "-12"),
                (4, "AN", "zero"),
                (4, "Temperature", "2000"),
                (6, "Date", "M1,S3,2026-02-30,55,0.1,40,"),
                (7, "Water", "ND"),
                (9, "", "M1,S6,2026-03-19,55,0.1"),
            ]);
        file.Problems[0]
            .ToString()
            .ShouldBe("lab.csv:2, Water: '-12': water content is -12 mg/kg; allowed: 0 to 500000 mg/kg");
        file.Problems[2].Reason.ShouldContain("oil temperature is 2000 °C; allowed: -60 to 200 °C");
        file.Problems[3].Reason.ShouldContain("is not a date; expected: ISO 8601");
        file.Problems[4].Reason.ShouldContain("no detection limit");
        file.Problems[5].Reason.ShouldContain("5 fields, the header has 7");
        file.SamplesOf("M1").Select(sample => sample.SampleNumber).ShouldBe(["S1", "S2", "S4", "2026-03-18"]);
        file.SamplesOf("M1")[0].Readings[Measurands.AcidNumber].Value.ShouldBe(0.1);
        file.SamplesOf("M1")[1].Texts["Remark"].ShouldBe("two\nlines");
        file.SamplesOf("M1")[2].Texts["Remark"].ShouldBe("-");
        file.Cells.All.ShouldBe(40);
    }

    [Fact]
    public void Whatever_stands_in_the_cells_none_is_lost_and_nothing_throws()
    {
        var cell = Gen.OneOf(
            Gen.Const(""),
            Gen.Const("-"),
            Gen.Const("ND"),
            Gen.Const("<5"),
            Gen.Const("NaN"),
            Gen.Const("1e999"),
            Gen.Const("12,5"),
            Gen.Double[-10, 1e6].Select(value => value.ToString("R")),
            Gen.String[Gen.Char["abc 0123456789<>.%"], 0, 8]
        );
        Gen.Select(cell, cell, cell)
            .Array[1, 20]
            .Holds(rows =>
            {
                var text =
                    "Machine,Sample No,Date,Water [ppm],AN,Remark\n"
                    + string.Concat(
                        rows.Select((row, i) => $"M1,S{i},2026-03-14,\"{row.Item1}\",\"{row.Item2}\",\"{row.Item3}\"\n")
                    );
                var file = Read(text);
                file.Cells.All.ShouldBe(6 * rows.Length);
                file.Cells.Keys.ShouldBe(3 * rows.Length);
                file.Cells.Rejected.ShouldBe(file.Problems.Count);
                file.Cells.Readings.ShouldBe(file.SamplesOf("M1").Sum(sample => sample.Readings.Count));
                file.Cells.Texts.ShouldBe(file.SamplesOf("M1").Sum(sample => sample.Texts.Count));
                file.Columns.Sum(one => one.ReadCount + one.BlankCount + one.RefusedCount).ShouldBe(6 * rows.Length);
            });
    }

    [Theory]
    [InlineData("", "lab.csv is empty")]
    [InlineData(" \r\n ", "lab.csv is empty")]
    [InlineData("%PDF-1.7\n\0\0\u0001", "lab.csv, line 2: NUL characters stand there")]
    [InlineData("Machine,Water\nM1,5\n", "lab.csv has no column for the date of sampling (one of: sampled,")]
    [InlineData("Water,AN\n5,0.1\n", "nor for the machine (one of: machine,")]
    [InlineData("Sample No,Date,Water\nS1,2026-03-14,5\n", "lab.csv has no column for the machine")]
    [InlineData("Dear customer\nplease find attached\n", "lab.csv has no column for the date of sampling")]
    public void A_file_that_is_none_gives_one_clear_message(string text, string expected) =>
        Should.Throw<FormatException>(() => Read(text)).Message.ShouldContain(expected);

    [Fact]
    public void A_column_map_names_all_its_faults()
    {
        var error = Should.Throw<FormatException>(() =>
            ColumnMap.Parse(
                """{ "delimeter": ";", "decimalSeparator": "x", "columns": [ { "names": ["W"], "measurand": "watercontent" }, { "names": ["V"], "measurand": "viscosity-40c", "unit": "%" } ] }"""
            )
        );

        error.Message.ShouldContain("$.delimeter: unknown");
        error.Message.ShouldContain("$.decimalSeparator: 'x'");
        error.Message.ShouldContain("did you mean 'water-content'?");
        error.Message.ShouldContain("The unit '%' cannot be converted to mm²/s");
    }

    [Fact]
    public void Two_columns_for_one_measurand_keep_the_first_and_report_the_second()
    {
        var file = Read("Machine,Sample No,Date,Water,Karl Fischer\nM1,S1,2026-03-14,50,60\n");

        file.SamplesOf("M1").Single().Readings[Measurands.WaterContent].Value.ShouldBe(50);
        file.Problems.Single().Reason.ShouldContain("says 50 mg/kg already");
    }

    [Fact]
    public void A_sensor_log_needs_a_time_and_nothing_else()
    {
        var log = SensorLog.Read(
            new StringReader("Time\tSaturation [aw]\tTemperature\n2026-03-14T06:15:00+02:00\t0.42\t51.5\n"),
            "log.tsv",
            ColumnMap.Default
        );

        var reading = log.Readings.Single();
        reading.At.ShouldBe(new DateTimeOffset(2026, 3, 14, 4, 15, 0, TimeSpan.Zero));
        reading.Readings[Measurands.RelativeSaturation].Value.ShouldBe(42, 1e-9);
    }

    [Fact]
    public void Ids_and_names_of_all_measurands_are_headers() =>
        Measurands
            .All.Where(measurand =>
                !measurand.Equals(Third($"Machine,Date,{measurand.Id}\nM1,2026-03-14,\n"))
                || !measurand.Equals(Third($"Machine;Date;{measurand.Name.ToUpperInvariant()}\nM1;2026-03-14;\n"))
            )
            .ShouldBeEmpty();

    private static Measurand? Third(string text) => Read(text).Columns[2].Measurand;
}
