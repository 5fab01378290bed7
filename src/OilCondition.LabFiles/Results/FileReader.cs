namespace OilCondition.LabFiles;

/// <summary>A file that is read row by row: what it holds at a time is one row, whatever its length.</summary>
/// <typeparam name="TRow"><see cref="LabRow"/> or <see cref="SensorRow"/>.</typeparam>
public sealed class FileReader<TRow> : IDisposable
{
    private readonly TableFile file;
    private readonly Func<ParsedRow, TRow> made;
    private bool isRead;

    internal FileReader(TableFile file, Func<ParsedRow, TRow> made)
    {
        this.file = file;
        this.made = made;
    }

    /// <summary>The columns, with the counts of the rows read so far. The counts are whole when all rows have been read.</summary>
    public IReadOnlyList<ColumnReport> Columns => file.Columns;

    /// <summary>What became of every cell of the rows read so far.</summary>
    public CellCounts Cells => file.Cells;

    /// <summary>What stands above the header, such as the laboratory's name, line by line.</summary>
    public IReadOnlyList<string> TitleLines => file.TitleLines;

    /// <summary>The rows in order of the file, each read when it is asked for; once.</summary>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>The header of each table, and each row that is not blank.</returns>
    /// <exception cref="InvalidOperationException">The rows were asked for before.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public IEnumerable<TRow> Rows(
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        if (isRead)
        {
            throw new InvalidOperationException("The rows of a file are read once; open it again to read them again.");
        }

        isRead = true;
        return file.Rows(progress, cancellationToken).Select(made);
    }

    /// <summary>Closes the file.</summary>
    public void Dispose() => file.Dispose();

    /// <summary>How many columns it has, and what was read so far.</summary>
    /// <returns>For example <c>16 columns; 40 cells: 12 keys, 20 readings, 5 blank, 1 rejected, 2 texts</c>.</returns>
    public override string ToString() => $"{Columns.Count} columns; {Cells}";
}
