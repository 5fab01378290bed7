namespace OilCondition.LabFiles;

/// <summary>A file with one table or several: its rows one after the other, and what is to be said of the columns.</summary>
internal sealed class TableFile : IDisposable
{
    private const int RowsBetweenReports = 10_000;

    private readonly string file;
    private readonly ColumnMap map;
    private readonly bool isLabFile;
    private readonly IEnumerator<FileStart> starts;
    private readonly IDisposable? owner;
    private readonly List<Table> tables = [];
    private readonly List<ParsedRow> passedOver = [];

    private TableFile(string file, ColumnMap map, bool isLabFile, IEnumerable<FileStart> starts, IDisposable? owner)
    {
        this.file = file;
        this.map = map;
        this.isLabFile = isLabFile;
        this.starts = starts.GetEnumerator();
        this.owner = owner;
    }

    /// <summary>The columns of all tables so far, with their counts so far.</summary>
    public IReadOnlyList<ColumnReport> Columns =>
        [
            .. tables.SelectMany(table =>
                table.Header.Columns.Select(column => new ColumnReport(column, table.Source.Sheet))
            ),
        ];

    public CellCounts Cells =>
        new(
            tables.Sum(table => table.Rows.Keys),
            tables.Sum(table => table.Rows.ReadingCells),
            tables.Sum(table => table.Rows.Blank),
            tables.Sum(table => table.Rows.Rejected),
            tables.Sum(table => table.Rows.Texts)
        );

    public IReadOnlyList<string> TitleLines => [.. tables.SelectMany(table => table.Header.Titles)];

    public static TableFile Open(string path, ColumnMap map, bool isLabFile)
    {
        var text = new TextFile(path, map);
        return Open(text.Reader, Path.GetFileName(path), map, isLabFile, () => text.FractionRead, text);
    }

    public static TableFile Open(
        TextReader reader,
        string file,
        ColumnMap map,
        bool isLabFile,
        Func<double?>? fractionRead = null,
        IDisposable? owner = null
    ) => Opened(new TableFile(file, map, isLabFile, [new TextStart(reader, fractionRead)], owner));

    public static TableFile Open(IEnumerable<TableSheet> sheets, string file, ColumnMap map, bool isLabFile) =>
        Opened(new TableFile(file, map, isLabFile, sheets.Select(sheet => new SheetStart(sheet)), null));

    /// <summary>The rows that are not blank. The first one of each table is its header, with what is to be said of its columns.</summary>
    public IEnumerable<ParsedRow> Rows(IProgress<FileProgress>? progress, CancellationToken cancellationToken)
    {
        var count = 0L;
        do
        {
            var table = tables[tables.Count - 1];
            yield return table.HeaderRow();
            while (table.Rows.Next() is { } row)
            {
                cancellationToken.ThrowIfCancellationRequested();
                yield return row;
                count++;
                if (count % RowsBetweenReports == 0)
                {
                    progress?.Report(new FileProgress(count, table.Source.FractionRead));
                }
            }
        } while (OpenNext());

        foreach (var sheet in passedOver)
        {
            yield return sheet;
        }

        progress?.Report(new FileProgress(count, 1));
    }

    public void Dispose()
    {
        starts.Dispose();
        owner?.Dispose();
    }

    private static TableFile Opened(TableFile opened)
    {
        try
        {
            return opened.OpenNext()
                ? opened
                : throw new FormatException(
                    string.Join(
                        " ",
                        opened
                            .passedOver.Select(sheet => sheet.Doubts[0].Reason)
                            .DefaultIfEmpty($"{opened.file} has no sheets.")
                    )
                );
        }
        catch
        {
            opened.Dispose();
            throw;
        }
    }

    /// <summary>Goes to the next table that has a header; sheets without one are passed over, and said to be.</summary>
    private bool OpenNext()
    {
        while (starts.MoveNext())
        {
            if (Table.Open(starts.Current, file, map, isLabFile, out var fault) is { } table)
            {
                tables.Add(table);
                return true;
            }

            var row = new ParsedRow(starts.Current.Sheet, 1);
            row.Doubt(new FileProblem(file, starts.Current.Sheet, 1, 0, "", starts.Current.Sheet, fault!.Message));
            passedOver.Add(row);
        }

        return false;
    }
}
