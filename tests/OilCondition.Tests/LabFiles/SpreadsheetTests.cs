using System.IO.Compression;
using OilCondition.LabFiles;
using OilCondition.Spreadsheets;

namespace OilCondition.Tests.LabFiles;

/// <summary>Workbooks by the same maps as text files.</summary>
public class SpreadsheetTests
{
    private static readonly string Head = InventedWorkbook.Texts(
        3,
        "Machine",
        "Sample No",
        "Date",
        "Water [%]",
        "AN",
        "Remark"
    );

    private static LabFileResult Read(string rows, ColumnMap? map = null)
    {
        using var book = new InventedWorkbook(("Results", Head + rows));
        return Spreadsheet.ReadLabFile(book.Path, map ?? ColumnMap.Default);
    }

    [Fact]
    public void Dates_numbers_texts_and_results_of_formulas_are_taken_as_cells_hold_them()
    {
        // 46095.25 is 2026-03-14 06:00: days since 1899-12-30.
        var file = Read(
            InventedWorkbook.Row(
                4,
                "t=\"s\"><v>0</v>",
                "><v>1042</v>",
                "s=\"1\"><v>46095.25</v>",
                "><f>D1/100</f><v>0.0123</v>",
                "s=\"4\"><v>0.15</v>",
                "t=\"s\"><v>1</v>"
            )
                + InventedWorkbook.Row(
                    7,
                    "t=\"s\"><v>0</v>",
                    "t=\"str\"><f>\"S\"&amp;2</f><v>S2</v>",
                    "s=\"2\"><v>46096</v>",
                    "t=\"inlineStr\"><is><t>&lt;0.001</t></is>"
                ),
            ColumnMap.Parse("""{ "offsetFromUtc": "+01:00" }""")
        );

        file.Problems.ShouldBeEmpty();
        var samples = file.SamplesOf("M1");
        samples.Select(sample => sample.SampleNumber).ShouldBe(["1042", "S2"]);
        samples[0].TakenAt.ShouldBe(new DateTimeOffset(2026, 3, 14, 6, 0, 0, TimeSpan.FromHours(1)));
        samples[0].Readings[Measurands.WaterContent].Value.ShouldBe(123, 1e-9);
        samples[0].Readings[Measurands.AcidNumber].Value.ShouldBe(0.15);
        samples[0].Texts["Remark"].ShouldBe("trüb");
        samples[1].Readings[Measurands.WaterContent].ShouldBe(new Reading(10, Qualifier.LessThan));
        file.Cells.All.ShouldBe(12);
    }

    [Fact]
    public void The_map_of_a_text_file_reads_the_same_rows()
    {
        var map = ColumnMap.Parse("""{ "decimalSeparator": ",", "delimiter": ";" }""");
        var text = LabFile.Read(
            new StringReader("Machine;Sample No;Date;Water [%];AN\nM1;S1;2026-03-14;0,0123;x\n"),
            "lab.csv",
            map
        );
        var book = Read(
            InventedWorkbook.Row(
                4,
                "t=\"s\"><v>0</v>",
                "t=\"str\"><v>S1</v>",
                "s=\"2\"><v>46095</v>",
                "><v>0.0123</v>",
                "t=\"str\"><v>x</v>"
            ),
            map
        );

        var sample = book.SamplesOf("M1").Single();
        sample.ToString().ShouldBe(text.SamplesOf("M1").Single().ToString());
        sample.Readings.ShouldBe(text.SamplesOf("M1").Single().Readings);
        book.Problems.Single().Reason.ShouldBe(text.Problems.Single().Reason);
        book.Problems.Single().ToString().ShouldMatch(@"^lab-\w+\.xlsx, Results!E4, AN: 'x': not a number");
    }

    [Theory]
    [InlineData("t=\"e\"><v>#DIV/0!</v>", "#DIV/0!")]
    [InlineData("><f>SUM(A1:A9)</f>", "=SUM(A1:A9)")] // never calculated
    [InlineData("t=\"b\"><v>1</v>", "TRUE")]
    [InlineData("><v>1E+400</v>", "1E+400")]
    [InlineData("s=\"1\"><v>46095</v>", "2026-03-14")] // a date is no reading
    public void What_is_no_number_is_reported_with_its_cell(string cell, string text)
    {
        var file = Read(InventedWorkbook.Row(4, "t=\"s\"><v>0</v>", "", "s=\"2\"><v>46095</v>", "", cell));

        file.Problems.Single().Text.ShouldBe(text);
        file.Problems.Single().ColumnNumber.ShouldBe(5);
        file.SamplesOf("M1").Count.ShouldBe(1);
    }

    [Theory]
    [InlineData("><v>46095</v>", "'46095' is not a date")] // a number without the format of a date
    [InlineData("s=\"1\"><v>-5</v>", "'-5' is not a date")]
    [InlineData("t=\"str\"><v>14.03.2026</v>", "'14.03.2026' is not a date")]
    public void A_row_without_a_date_is_refused_whole(string cell, string reason)
    {
        var file = Read(InventedWorkbook.Row(4, "t=\"s\"><v>0</v>", "", cell, "><v>0.01</v>"));

        file.Problems.Single().Reason.ShouldStartWith(reason);
        file.Cells.Rejected.ShouldBe(4);
        file.Problems.Single().ToString().ShouldContain("Results!C4");
    }

    [Fact]
    public void Dates_may_count_from_1904_and_times_stand_in_a_column_of_their_own()
    {
        using var book = new InventedWorkbook(
            "date1904=\"1\"",
            (
                "Log",
                InventedWorkbook.Texts(1, "Date", "Time", "Oil temperature [°C]")
                    + InventedWorkbook.Row(
                        2,
                        "s=\"2\"><v>44633</v>",
                        "s=\"3\"><v>0.260416666666667</v>",
                        "><v>51.5</v>"
                    )
            )
        );

        var reading = Spreadsheet.ReadSensorLog(book.Path, ColumnMap.Default).Readings.Single();
        reading.At.ShouldBe(new DateTimeOffset(2026, 3, 14, 6, 15, 0, TimeSpan.Zero));
    }

    [Fact]
    public void All_sheets_with_a_header_are_read_and_the_others_are_said_to_be_passed_over()
    {
        var rows = InventedWorkbook.Row(4, "t=\"s\"><v>0</v>", "", "s=\"2\"><v>46095</v>", "><v>0.01</v>");
        using var book = new InventedWorkbook(
            ("Cover", InventedWorkbook.Texts(1, "Example Oil Laboratory")),
            ("North", Head + rows),
            ("Empty", ""),
            ("South", Head + rows.Replace("46095", "46099"))
        );
        var file = Spreadsheet.ReadLabFile(book.Path, ColumnMap.Default);

        file.SamplesOf("M1").Count.ShouldBe(2);
        file.Columns.Select(column => column.Sheet).Distinct().ShouldBe(["North", "South"]);
        file.Doubts.Where(doubt => doubt.Sheet is "Cover" or "Empty")
            .Select(doubt => doubt.Reason)
            .ShouldAllBe(reason => reason.Contains("has no"));
        file.Doubts.Count(doubt => doubt.Sheet is "Cover" or "Empty").ShouldBe(2);
    }

    [Fact]
    public void Row_by_row_and_a_workbook_left_in_the_middle_is_closed()
    {
        var rows = string.Concat(
            Enumerable
                .Range(4, 2000)
                .Select(i =>
                    InventedWorkbook.Row(
                        i,
                        "t=\"s\"><v>0</v>",
                        "",
                        $"s=\"1\"><v>{46000 + i / 24.0:R}</v>",
                        "><v>0.01</v>"
                    )
                )
        );
        using var book = new InventedWorkbook(("Results", Head + rows));
        using (var open = Spreadsheet.OpenLabFile(book.Path, ColumnMap.Default))
        {
            open.Rows().Take(5).Last().Line.ShouldBe(7);
        }

        File.Open(book.Path, FileMode.Open, FileAccess.ReadWrite, FileShare.None).Dispose();
    }

    [Theory]
    [InlineData("%PDF-1.7", "is not a workbook (.xlsx)")]
    [InlineData("Machine,Date\n", "is not a workbook (.xlsx)")]
    [InlineData("", "is not a workbook (.xlsx)")]
    [InlineData("PK\u0003\u0004 and nothing more", "that can be read")]
    [InlineData("\u00D0\u00CF\u0011\u00E0", "of the old kind (.xls) or one with a password")]
    public void What_is_no_workbook_is_refused(string text, string expected)
    {
        var path = Path.Combine(Path.GetTempPath(), $"lab-{Guid.NewGuid():N}.xlsx");
        File.WriteAllBytes(path, [.. text.Select(letter => (byte)letter)]);
        try
        {
            Should
                .Throw<FormatException>(() => Spreadsheet.ReadLabFile(path, ColumnMap.Default))
                .Message.ShouldContain(expected);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Theory]
    [InlineData("<row r=\"4\"><c r=\"A4\" t=\"s\"><v>77</v></c></row>", "text 77")]
    [InlineData("<row r=\"4\"><c r=\"ZZZZ4\"><v>1</v></c></row>", "'ZZZZ4' is no cell")]
    [InlineData("<row r=\"4\"><c r=\"A4\"><v>1</v></row>", "that can be read")]
    [InlineData("<row r=\"99999999999\"><c><v>1</v></c></row>", "that can be read")]
    public void A_broken_workbook_is_refused_with_one_message(string rows, string expected) =>
        Should.Throw<FormatException>(() => Read(rows)).Message.ShouldContain(expected);

    [Fact]
    public void A_workbook_made_to_fill_the_memory_is_refused()
    {
        using var book = new InventedWorkbook(("Results", Head));
        using (var archive = ZipFile.Open(book.Path, ZipArchiveMode.Update))
        {
            using var stream = archive.CreateEntry("xl/media/image1.bin").Open();
            for (var i = 0; i < 100; i++)
            {
                stream.Write(new byte[1 << 20], 0, 1 << 20);
            }
        }

        Should
            .Throw<FormatException>(() => Spreadsheet.ReadLabFile(book.Path, ColumnMap.Default))
            .Message.ShouldContain("would unpack to 104,");
    }
}
