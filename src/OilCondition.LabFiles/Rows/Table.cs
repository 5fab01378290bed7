using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>One table of a file: its header, settled by its first rows, and its rows.</summary>
internal sealed class Table
{
    private const int MostCited = 20;

    private readonly string file;

    private Table(string file, Header header, RowSource source, RowReader rows)
    {
        this.file = file;
        Header = header;
        Source = source;
        Rows = rows;
    }

    public Header Header { get; }

    public RowSource Source { get; }

    public RowReader Rows { get; }

    /// <summary>Opens a table; null, with the reason, where it has no header.</summary>
    public static Table? Open(FileStart start, string file, ColumnMap map, bool isLabFile, out FormatException? fault)
    {
        var found = HeaderSearch.In(start, map, isLabFile);
        if (found is not var (header, way) || !header.IsComplete)
        {
            fault =
                start.EncodingFault(file) ?? found?.Header.Refusal(file) ?? new FormatException($"{file} has no rows.");
            return null;
        }

        fault = null;
        var numbers = FirstRows.Settle(header, start.Again(way), map, start.CommasDivideCells(way));
        var source = start.All(way);
        return new Table(file, header, source, new RowReader(file, map, header, source, numbers));
    }

    /// <summary>The header as a row: what is to be said of its columns.</summary>
    public ParsedRow HeaderRow()
    {
        var row = new ParsedRow(Source.Sheet, Header.Line);
        foreach (var column in Header.Columns)
        {
            if (column.Refusal.Length > 0)
            {
                row.Refuse(Problem(column, column.Refusal));
            }
            else if (column.Doubt.Length > 0 && !IsAssumed(column))
            {
                row.Doubt(Problem(column, column.Doubt));
            }
        }

        // Twenty elements in mg/kg are one thing to look at.
        foreach (var assumed in Header.Columns.Where(IsAssumed).GroupBy(column => column.Unit, StringComparer.Ordinal))
        {
            row.Doubt(AssumedUnit(assumed.Key, [.. assumed]));
        }

        return row;
    }

    private static bool IsAssumed(Column column) =>
        column.UnitFrom == UnitOrigin.Assumed
        && column.Doubt.Length > 0
        && column.Refusal.Length == 0
        && column.Use == ColumnUse.Reading;

    private FileProblem AssumedUnit(string unit, List<Column> columns)
    {
        var names = string.Join(", ", columns.Take(MostCited).Select(column => PlainText.Cut(column.Header.AsSpan())));
        var more = columns.Count > MostCited ? $" and {columns.Count - MostCited} more" : "";
        return new FileProblem(
            file,
            Source.Sheet,
            Header.Line,
            columns.Count == 1 ? columns[0].Index + 1 : 0,
            columns.Count == 1 ? columns[0].Header : "",
            names + more,
            $"the unit {unit} is assumed; neither the file nor the column map states it"
        );
    }

    private FileProblem Problem(Column column, string reason) =>
        new(
            file,
            Source.Sheet,
            Header.Line,
            column.Index + 1,
            column.Header,
            PlainText.Cut(column.Header.AsSpan()),
            reason
        );
}
