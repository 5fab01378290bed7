using System.Text;
using OilCondition.LabFiles;

namespace OilCondition.Tests.LabFiles;

/// <summary>Files that go wrong as text: quotes, separators, encodings, lengths.</summary>
public class HostileTextTests
{
    private static LabFileResult Read(string text, string map = "{}") =>
        LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Parse(map));

    private static string Numbers(LabFileResult file) =>
        string.Join(" ", file.SamplesOf("M1").Select(sample => sample.SampleNumber));

    private static LabFileResult ReadBytes(byte[] bytes, string map = "{}")
    {
        var path = Path.Combine(Path.GetTempPath(), $"lab-{Guid.NewGuid():N}.csv");
        File.WriteAllBytes(path, bytes);
        try
        {
            return LabFile.Read(path, ColumnMap.Parse(map));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Theory]
    [InlineData("sep=;\nMachine;Sample No;Date;Water [ppm]\nM1;S1;2026-03-14;5,5\n")]
    [InlineData(
        "Example Oil Laboratory;;;\nReport 17, issued 2026-03-20\n\nMachine;Sample No;Date;Water [ppm]\nM1;S1;2026-03-14;55\n"
    )]
    [InlineData(
        "Date: 2026-03-20, Machine park: north\nMachine\tSample No\tDate\tWater [ppm]\nM1\tS1\t2026-03-14\t55\n"
    )]
    [InlineData("Machine|Sample No|Date|Water [ppm]\rM1|S1|2026-03-14|55\r")]
    [InlineData("Machine;Sample No;Date;Water [ppm]\nM1;S1;2026-03-14;55;\n")]
    [InlineData("Machine;Sample No;Date;Water [ppm];\nM1;S1;2026-03-14;55\n")]
    [InlineData("Machine;Sample No;Date;Water [ppm];;;\nM1;S1;2026-03-14;55;;\n;;;;;;\n")]
    [InlineData("\uFEFFMachine,Sample No,Date,Water [ppm]\r\n\"M1\",\"S1\",\"2026-03-14\",\"55\"\r\n\r\n")]
    [InlineData("Machine,Sample No,Date,Water [ppm]\nM1 , S1 , 2026-03-14 , \"55\" ")]
    public void Forms_in_which_files_are_sent(string text) => Numbers(Read(text)).ShouldBe("S1");

    [Fact]
    public void A_blank_cell_behind_a_trailing_separator_is_counted() =>
        Read("Machine;Date;AN\nM1;2026-03-14;0.1;\n")
            .Cells.ToString()
            .ShouldBe("4 cells: 2 keys, 1 readings, 1 blank, 0 rejected, 0 texts");

    [Fact]
    public void Title_lines_are_kept()
    {
        var file = Read("Example Oil Laboratory\nReport 17\nMachine,Date,AN\nM1,2026-03-14,0.1\n");

        file.TitleLines.ShouldBe(["Example Oil Laboratory", "Report 17"]);
        file.Cells.All.ShouldBe(3);
    }

    [Theory]
    [InlineData("M1,S1,2026-03-14,55,\"open\nM1,S2,2026-03-15,60,fine\nM1,S3,2026-03-16,60,\n", "S2 S3", 2)]
    [InlineData("M1,S1,2026-03-14,55,\"open\nM1,S2,2026-03-15,60,\"closed\"\nM1,S3,2026-03-16,60,\n", "S2 S3", 2)]
    [InlineData("M1,S1,2026-03-14,55,\"shut\"x\nM1,S2,2026-03-15,60,\n", "S2", 2)]
    [InlineData("M1,S1,2026-03-14,55,1/2\" hose\nM1,S2,2026-03-15,60,\n", "S1 S2", null)]
    [InlineData("M1,S1,2026-03-14,55,\"a \"\"b\"\"\nc\"\nM1,S2,2026-03-15,x,\n", "S1 S2", 4)]
    [InlineData("M1,S1,2026-03-14,55,\"end of file", "", 2)]
    public void A_quote_that_goes_wrong_costs_one_line(string rows, string expected, int? line)
    {
        var file = Read("Machine,Sample No,Date,Water [ppm],Remark\n" + rows);

        Numbers(file).ShouldBe(expected);
        file.Problems.Select(problem => problem.Line).ShouldBe(line is null ? [] : [line.Value]);
        file.Cells.All.ShouldBe(5 * (file.SamplesOf("M1").Count + file.Problems.Count(one => one.Column.Length == 0)));
    }

    [Fact]
    public void A_quoted_text_is_kept_with_its_quotes_and_lines() =>
        Read("Machine,Date,Remark,AN\nM1,2026-03-14,\" a \"\"b\"\"\r\nc\",0.1\n")
            .SamplesOf("M1")
            .Single()
            .Texts["Remark"]
            .ShouldBe(" a \"b\"\r\nc");

    [Fact]
    public void A_cell_of_ten_million_characters_gives_a_short_message()
    {
        var file = Read($"Machine,Date,AN\nM1,2026-03-14,{new string('7', 10_000_000)}\nM1,2026-03-15,0.1\n");

        file.SamplesOf("M1").Count.ShouldBe(2);
        file.Problems.Single().Text.ShouldBe(new string('7', 200) + "… (10,000,000 characters)");
        file.Problems.Single().ToString().Length.ShouldBeLessThan(400);
    }

    [Fact]
    public void A_row_that_never_ends_is_refused_without_being_held()
    {
        // Longer than a row may be: the quote is never closed, and the line never ends.
        var endless = "M1,2026-03-14,\"" + new string('x', 1 << 25);
        var file = Read($"Machine,Date,AN\n{endless}\nM1,2026-03-15,0.1\n");

        file.SamplesOf("M1").Count.ShouldBe(1);
        var problem = file.Problems.Single();
        problem.Reason.ShouldBe("a quote is opened and not closed, or something follows the closing one");
        problem.Text.ShouldEndWith("… (33,554,447 characters)");
        Read($"Machine,Date,AN\nM1,{new string('x', 1 << 25)}\nM1,2026-03-15,0.1\n")
            .Problems.Single()
            .Reason.ShouldBe("the row has more than 16,777,216 characters");
    }

    [Fact]
    public void Two_hundred_thousand_headers_are_matched_at_once()
    {
        var names = string.Join(",", Enumerable.Range(0, 200_000).Select(i => $"extra column {i} [mg/kg]"));
        var file = Read($"Machine,Date,Iron [ppm],{names}\nM1,2026-03-14,5{new string(',', 200_000)}\n");

        file.Columns.Count.ShouldBe(200_003);
        file.SamplesOf("M1").Single().Readings[Measurands.Iron].Value.ShouldBe(5);
        Should.Throw<FormatException>(() => Read($"{names}\n1\n")).Message.Length.ShouldBeLessThan(1500);
    }

    [Theory]
    [InlineData("utf-16", "lab-", "line 1: NUL characters stand there, as in UTF-16 without a byte order mark")]
    [InlineData(
        "iso-8859-1",
        "lab-",
        "line 1: bytes stand there that are no text in this encoding, as those of Windows-1252"
    )]
    public void A_header_in_another_encoding_names_line_and_remedy(string encoding, string file, string expected)
    {
        var bytes = Encoding.GetEncoding(encoding).GetBytes("Größe;Ölprobe;Entnahme;Wasser\nM1;S1;2026-03-14;55\n");

        var message = Should.Throw<FormatException>(() => ReadBytes(bytes)).Message;
        message.ShouldStartWith(file);
        message.ShouldContain(expected);
        message.ShouldContain($"state \"encoding\": \"{(encoding == "utf-16" ? encoding : "windows-1252")}\"");
    }

    [Fact]
    public void The_map_states_the_encoding()
    {
        var text = "Machine;Sample No;Date;Remark;AN\nFörder;S1;2026-03-14;trüb – 5 €;0.1\n";
        // Windows-1252: ö is F6, ü FC, – 96, € 80.
        var bytes = text.Select(letter =>
                letter switch
                {
                    '–' => (byte)0x96,
                    '€' => (byte)0x80,
                    _ => (byte)letter,
                }
            )
            .ToArray();

        var damaged = ReadBytes(bytes);
        damaged.MachineIds.ShouldBeEmpty();
        damaged.Problems.Single().Line.ShouldBe(2);
        damaged.Problems.Single().Reason.ShouldContain("check the file's encoding");
#if !NETSTANDARD_BUILD
        var read = ReadBytes(bytes, """{ "encoding": "windows-1252" }""");
        read.SamplesOf("Förder").Single().Texts["Remark"].ShouldBe("trüb – 5 €");
#endif
        ReadBytes(Encoding.Unicode.GetBytes(text), """{ "encoding": "utf-16" }""").MachineIds.ShouldBe(["Förder"]);
        ReadBytes([.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)])
            .MachineIds.ShouldBe(["Förder"]);
    }

    [Fact]
    public void A_damaged_text_is_a_problem_and_its_readings_are_kept()
    {
        var file = Read("Machine,Date,Remark,AN\nM1,2026-03-14,tr\uFFFDb,0.1\nM1,2026-03-15,x,0\0.1\n");

        file.SamplesOf("M1").Select(sample => sample.Readings.Count).ShouldBe([1, 0]);
        file.Problems.Select(problem => (problem.Line, problem.Column)).ShouldBe([(2, "Remark"), (3, "AN")]);
        file.Problems.ShouldAllBe(problem => problem.Reason.Contains("state the encoding in the column map"));
    }

    [Theory]
    [InlineData(
        new byte[] { 0x50, 0x4B, 3, 4, 0, 0 },
        "a workbook (.xlsx) or another archive; OilCondition.Spreadsheets reads workbooks"
    )]
    [InlineData(new byte[] { 0xD0, 0xCF, 0x11, 0xE0, 0xA1 }, "a workbook of the old kind (.xls)")]
    [InlineData(new byte[] { 0x25, 0x50, 0x44, 0x46, 0x2D }, "a PDF")]
    [InlineData(new byte[] { }, "is empty")]
    public void Another_kind_of_file_is_called_by_its_name(byte[] bytes, string expected) =>
        Should.Throw<FormatException>(() => ReadBytes(bytes)).Message.ShouldContain(expected);
}
