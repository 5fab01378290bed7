using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>A delimited file of readings, taken over row by row and cell by cell.</summary>
internal sealed class ReadingTable
{
    private static readonly char[] Delimiters = [',', ';', '\t'];

    private readonly string file;
    private readonly ColumnMap map;
    private readonly Header header;
    private readonly List<ReadingRow> rows = [];
    private readonly List<FileProblem> problems = [];
    private readonly Dictionary<int, Dictionary<int, string>> unmapped = [];
    private int keys;
    private int readings;
    private int blank;
    private int rejected;
    private int unmappedCells;

    private ReadingTable(string file, ColumnMap map, Header header)
    {
        this.file = file;
        this.map = map;
        this.header = header;
    }

    public IReadOnlyList<ReadingRow> Rows => rows;

    public IReadOnlyList<FileProblem> Problems => problems;

    public IReadOnlyList<UnmappedColumn> UnmappedColumns =>
        [
            .. header.Unmapped.Select(index => new UnmappedColumn(
                header.Names[index],
                unmapped.TryGetValue(index, out var cells) ? cells : new Dictionary<int, string>()
            )),
        ];

    public CellCounts Cells => new(keys, readings, blank, rejected, unmappedCells);

    public static ReadingTable Read(TextReader reader, string file, ColumnMap map, bool isLabFile)
    {
        var text = reader.ReadToEnd();
        if (string.IsNullOrWhiteSpace(text))
        {
            throw new FormatException($"{file} is empty; a header line and rows are expected.");
        }

        if (text.Contains('\0') || text.Contains('\uFFFD'))
        {
            throw new FormatException(
                $"{file} is not a text file in UTF-8; is it a spreadsheet, a PDF or in another encoding?"
            );
        }

        var stray = new List<string>();
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = (map.Delimiter ?? MostFrequentDelimiter(text)).ToString(),
            IgnoreBlankLines = false,
            TrimOptions = TrimOptions.Trim,
            BadDataFound = bad => stray.Add(bad.RawRecord.Trim()),
        };
        using var parser = new CsvParser(new StringReader(text), configuration);
        var table = default(ReadingTable);
        var line = 1;
        while (parser.Read())
        {
            var fields = parser.Record ?? [];
            if (fields.All(field => field.Length == 0) && fields.Length <= 1)
            {
                line = parser.RawRow + 1;
                continue;
            }

            if (table is null)
            {
                table = new ReadingTable(file, map, Header.Match(fields, file, map, isLabFile));
            }
            else
            {
                table.AddRow(
                    fields,
                    line,
                    stray.Count > 0 ? "a quote stands where none belongs" : "",
                    parser.RawRecord
                );
            }

            stray.Clear();
            line = parser.RawRow + 1;
        }

        return table!;
    }

    private void AddRow(string[] fields, int line, string fault, string raw)
    {
        if (fields.Length != header.Names.Count)
        {
            fault = $"the row has {fields.Length} fields, the header has {header.Names.Count}";
        }

        if (fault.Length > 0)
        {
            Reject(fields.Length, line, "", raw.TrimEnd('\r', '\n'), fault);
            return;
        }

        var machine = header.Machine is { } m ? fields[m] : "";
        var sample = header.SampleNumber is { } s ? fields[s] : "";
        var missing = new[]
        {
            header.Machine is not null && machine.Length == 0 ? "the machine is missing" : "",
            header.SampleNumber is not null && sample.Length == 0 ? "the sample number is missing" : "",
            machine.Contains('/') ? "a machine id must not contain a slash" : "",
        }.FirstOrDefault(text => text.Length > 0);
        if (missing is not null)
        {
            Reject(fields.Length, line, "", raw.TrimEnd('\r', '\n'), missing);
            return;
        }

        if (!map.TryParseDate(fields[header.TakenAt], out var at))
        {
            var forms = string.Join(", ", map.DateFormats.Prepend("ISO 8601 (2026-03-14, 2026-03-14 06:15)"));
            var problem =
                $"'{fields[header.TakenAt]}' is not a date; expected: {forms}, in the years {Guard.FirstYear} to {Guard.LastYear}";
            Reject(fields.Length, line, header.Names[header.TakenAt], raw.TrimEnd('\r', '\n'), problem);
            return;
        }

        keys += header.KeyCount;
        rows.Add(new ReadingRow(machine, sample, at, ReadCells(fields, line)));
    }

    private Dictionary<Measurand, Reading> ReadCells(string[] fields, int line)
    {
        var taken = new Dictionary<Measurand, Reading>();
        foreach (var (index, column, unit) in header.Readings)
        {
            var text = fields[index];
            if (Cell.IsBlank(text))
            {
                blank++;
            }
            else if (!Cell.TryRead(text, unit, column, map.DecimalSeparator, out var reading, out var reason))
            {
                Reject(1, line, header.Names[index], text, reason);
            }
            else if (taken.TryGetValue(column.Measurand, out var first))
            {
                Reject(
                    1,
                    line,
                    header.Names[index],
                    text,
                    $"another column of this row says {first} {column.Measurand.Unit} already"
                );
            }
            else
            {
                taken.Add(column.Measurand, reading);
                readings++;
            }
        }

        foreach (var index in header.Unmapped)
        {
            if (fields[index].Length == 0)
            {
                blank++;
                continue;
            }

            if (!unmapped.TryGetValue(index, out var cells))
            {
                unmapped.Add(index, cells = []);
            }

            cells[line] = fields[index];
            unmappedCells++;
        }

        return taken;
    }

    private void Reject(int cells, int line, string column, string text, string reason)
    {
        rejected += cells;
        problems.Add(new FileProblem(file, line, column, text, reason));
    }

    private static char MostFrequentDelimiter(string text)
    {
        var first = text.TrimStart('\r', '\n', ' ').Split('\n')[0];
        return Delimiters.OrderByDescending(delimiter => first.Count(letter => letter == delimiter)).First();
    }
}
