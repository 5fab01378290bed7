using CsCheck;
using OilCondition.LabFiles;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.LabFiles;

/// <summary>Files of any length, row by row.</summary>
public class StreamingTests
{
    private const string Head = "Machine,Sample No,Date,Water [ppm]\n";

    private static string Row(int i) => $"M{i % 7},S{i},2026-03-14,{i % 900}\n";

    /// <summary>Gives as many rows as are asked for, and counts them.</summary>
    private sealed class EndlessText(int rows) : TextReader
    {
        private string waiting = Head;
        private int position;

        public int Given { get; private set; }

        public override int Read(char[] buffer, int index, int count)
        {
            if (position == waiting.Length)
            {
                if (Given == rows)
                {
                    return 0;
                }

                (waiting, position) = (Row(Given++), 0);
            }

            var length = Math.Min(count, waiting.Length - position);
            waiting.CopyTo(position, buffer, index, length);
            position += length;
            return length;
        }
    }

    private sealed class Told : IProgress<FileProgress>
    {
        public List<FileProgress> Reports { get; } = [];

        public void Report(FileProgress value) => Reports.Add(value);
    }

    [Fact]
    public void No_more_is_read_than_the_beginning_and_a_buffer_beyond_the_row_at_hand()
    {
        var text = new EndlessText(int.MaxValue);
        using var file = LabFile.Open(text, "lab.csv", ColumnMap.Default);
        var read = 0;
        foreach (var _ in file.Rows().Take(50_000))
        {
            read++;
            // Half of 131,072 characters of 23 or more stand before the first row, and as many in the buffer.
            (text.Given - read).ShouldBeLessThan(12_000);
        }

        file.Cells.All.ShouldBe(4 * (read - 1));
    }

    [Fact]
    public void Progress_is_told_every_ten_thousand_rows_and_at_the_end()
    {
        var told = new Told();
        var file = LabFile.Read(new EndlessText(25_000), "lab.csv", ColumnMap.Default, told);

        told.Reports.Select(report => report.RowCount).ShouldBe([10_000, 20_000, 25_000]);
        told.Reports[2].ToString().ShouldBe("25000 rows, 100 %");
        told.Reports[0].Fraction.ShouldBeNull();
        file.MachineIds.Count.ShouldBe(7);

        var path = Path.Combine(Path.GetTempPath(), $"lab-{Guid.NewGuid():N}.csv");
        File.WriteAllText(path, Head + string.Concat(Enumerable.Range(0, 25_000).Select(Row)));
        told.Reports.Clear();
        LabFile.Read(path, ColumnMap.Default, told).Cells.All.ShouldBe(100_000);
        File.Delete(path);
        told.Reports[0].Fraction!.Value.ShouldBe(0.5, 0.2);
    }

    [Fact]
    public void It_stops_between_two_rows_when_it_is_cancelled()
    {
        using var source = new CancellationTokenSource();
        using var file = LabFile.Open(new EndlessText(int.MaxValue), "lab.csv", ColumnMap.Default);
        var read = 0;

        Should.Throw<OperationCanceledException>(() =>
        {
            foreach (var _ in file.Rows(cancellationToken: source.Token))
            {
                read++;
                if (read == 1000)
                {
                    source.Cancel();
                }
            }
        });
        read.ShouldBe(1000);
    }

    [Fact]
    public void Rows_are_read_once_and_the_first_one_is_the_header()
    {
        using var file = LabFile.Open(
            new StringReader("x\nMachine,Date,Water,AN\nM1,2026-03-14,0.4,0.1\nM1,?,0.3,0.1\n"),
            "lab.csv",
            ColumnMap.Default
        );
        var rows = file.Rows().ToList();

        rows.Select(row => (row.Line, row.Sample is not null, row.Problems.Count, row.Doubts.Count))
            .ShouldBe([(2, false, 1, 0), (3, true, 0, 0), (4, false, 1, 0)]);
        rows[1].Sample!.Readings.Keys.ShouldBe([Measurands.AcidNumber]);
        rows[1].ToString().ShouldBe("line 3: M1, unnumbered of 2026-03-14, 0 problems");
        Should.Throw<InvalidOperationException>(() => file.Rows()).Message.ShouldContain("read once");
        file.ToString().ShouldBe("4 columns; 8 cells: 2 keys, 1 readings, 0 blank, 5 rejected, 0 texts");
    }

    [Fact]
    public void What_a_plain_writer_writes_after_RFC_4180_is_read_back()
    {
        var cell = Gen.String[Gen.Char["ab\",;\r\n 'é\t1"], 0, 12];
        Gen.Select(cell, cell)
            .Array[1, 30]
            .Holds(rows =>
            {
                var text =
                    "Machine,Date,One,Two\r\n"
                    + string.Concat(rows.Select(row => $"M1,2026-03-14,{Quoted(row.Item1)},{Quoted(row.Item2)}\r\n"));
                var file = LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default);

                file.Problems.ShouldBeEmpty();
                file.SamplesOf("M1")
                    .Select(sample => (Of(sample, "One"), Of(sample, "Two")))
                    .ShouldBe(rows.Select(row => (Kept(row.Item1), Kept(row.Item2))));
            });

        static string Quoted(string text) => $"\"{text.Replace("\"", "\"\"")}\"";
        static string Of(OilSample sample, string header) => sample.Texts.TryGetValue(header, out var text) ? text : "";
        static string Kept(string text) => string.IsNullOrWhiteSpace(text) ? "" : text;
    }

    [Fact]
    public void Whatever_letters_a_file_has_no_cell_is_lost_and_nothing_but_a_refusal_is_thrown()
    {
        var letters = Gen.Char["Machine,Date\"\r\n;1.5-26M0<>\t\0\uFFFD "];
        Gen.Select(Gen.String[letters, 0, 300], Gen.Bool)
            .Holds(one =>
            {
                var text = one.Item2 ? "Machine,Date,Water [ppm],Note\n" + one.Item1 : one.Item1;
                try
                {
                    var file = LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default);
                    file.Cells.Readings.ShouldBe(
                        file.MachineIds.Sum(id => file.SamplesOf(id).Sum(sample => sample.Readings.Count))
                    );
                    file.Cells.Texts.ShouldBe(
                        file.MachineIds.Sum(id => file.SamplesOf(id).Sum(sample => sample.Texts.Count))
                    );
                }
                catch (FormatException error)
                {
                    one.Item2.ShouldBeFalse(error.Message);
                }
            });
    }
}
