using Microsoft.Data.Analysis;
using OilCondition.LabFiles;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>What became of a file, as frames that join by sheet and line: what was taken over, what was refused or is in doubt, and each column.</summary>
/// <example>
/// <code>
/// using var file = LabFile.Open("samples.csv", ColumnMap.Default);
/// var account = FileAccount.Of(file);
/// var readings = account.Records.ToLongFrame();
/// var refused = account.Problems;
/// </code>
/// </example>
public sealed class FileAccount
{
    private static readonly FrameShape<(FileProblem Problem, bool IsDoubt)> ProblemShape = new FrameShape<(
        FileProblem Problem,
        bool IsDoubt
    )>()
        .Text("file", row => row.Problem.File)
        .Text(FrameNames.Sheet, row => row.Problem.Sheet)
        .Whole(FrameNames.Line, row => row.Problem.Line)
        .Whole("columnNumber", row => row.Problem.ColumnNumber == 0 ? null : row.Problem.ColumnNumber)
        .Word("column", row => row.Problem.Column)
        .Text("cell", row => row.Problem.Text)
        .Text("outcome", row => row.IsDoubt ? "doubt" : "refused")
        .Text(FrameNames.Reason, row => row.Problem.Reason);

    private static readonly FrameShape<ColumnReport> ColumnShape = new FrameShape<ColumnReport>()
        .Text(FrameNames.Sheet, column => column.Sheet)
        .Text(FrameNames.Header, column => column.Header)
        .Text("use", column => PlainText.Kebab(column.Use))
        .Text(FrameNames.Measurand, column => column.Measurand?.Id)
        .Word(FrameNames.Unit, column => column.Unit)
        .Text("unitFrom", column => column.UnitFrom == UnitOrigin.None ? null : PlainText.Kebab(column.UnitFrom))
        .Whole("read", column => column.ReadCount)
        .Whole("blank", column => column.BlankCount)
        .Whole("bounded", column => column.BoundedCount)
        .Whole("refused", column => column.RefusedCount)
        .Word("doubt", column => column.Doubt);

    private FileAccount(
        OilRecords records,
        IEnumerable<FileProblem> problems,
        IEnumerable<FileProblem> doubts,
        IReadOnlyList<ColumnReport> columns,
        CellCounts cells
    )
    {
        Records = records;
        Problems = ProblemShape.Of([
            .. problems.Select(problem => (problem, false)),
            .. doubts.Select(problem => (problem, true)),
        ]);
        Columns = ColumnShape.Of(columns);
        Cells = cells;
    }

    /// <summary>What was taken over; each record with its sheet and line where the file was read row by row.</summary>
    public OilRecords Records { get; }

    /// <summary>A row for each cell or row that was refused, then for each that is in doubt: file, sheet, line, column, text and reason.</summary>
    public DataFrame Problems { get; }

    /// <summary>A row for each column of the file: what it was read as, in which unit, who said so, and what became of its cells.</summary>
    public DataFrame Columns { get; }

    /// <summary>What became of every cell.</summary>
    public CellCounts Cells { get; }

    /// <summary>Reads an opened laboratory file to its end, with the line of each sample.</summary>
    /// <param name="file">The file, opened, of which no row has been read.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>The account. It holds all samples: a file of any length is read row by row instead.</returns>
    /// <exception cref="InvalidOperationException">Rows were read before.</exception>
    public static FileAccount Of(
        FileReader<LabRow> file,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    ) => Of(Guard.NotNull(file), row => (FrameRecord.Of(row), row.Problems, row.Doubts), progress, cancellationToken);

    /// <summary>Reads an opened sensor log to its end, with the line of each reading.</summary>
    /// <param name="file">The log, opened, of which no row has been read.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>The account. It holds all readings.</returns>
    /// <exception cref="InvalidOperationException">Rows were read before.</exception>
    public static FileAccount Of(
        FileReader<SensorRow> file,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    ) => Of(Guard.NotNull(file), row => (FrameRecord.Of(row), row.Problems, row.Doubts), progress, cancellationToken);

    /// <summary>The account of a laboratory file that was read as a whole; the lines of its samples are not known.</summary>
    /// <param name="file">What was read.</param>
    /// <returns>The account.</returns>
    public static FileAccount Of(LabFileResult file) => Of(Guard.NotNull(file), OilRecords.Of(file));

    /// <summary>The account of a sensor log that was read as a whole; lines and texts of its readings are not known.</summary>
    /// <param name="file">What was read.</param>
    /// <returns>The account.</returns>
    public static FileAccount Of(SensorLogResult file) => Of(Guard.NotNull(file), OilRecords.Of(file));

    private static FileAccount Of<TRow>(
        FileReader<TRow> file,
        Func<
            TRow,
            (FrameRecord? Record, IReadOnlyList<FileProblem> Problems, IReadOnlyList<FileProblem> Doubts)
        > partsOf,
        IProgress<FileProgress>? progress,
        CancellationToken cancellationToken
    )
    {
        var (records, problems, doubts) = (new List<FrameRecord>(), new List<FileProblem>(), new List<FileProblem>());
        foreach (var row in file.Rows(progress, cancellationToken))
        {
            var parts = partsOf(row);
            problems.AddRange(parts.Problems);
            doubts.AddRange(parts.Doubts);
            if (parts.Record is { } record)
            {
                records.Add(record);
            }
        }

        return new FileAccount(new OilRecords(records), problems, doubts, file.Columns, file.Cells);
    }

    private static FileAccount Of(FileResult file, OilRecords records) =>
        new(records, file.Problems, file.Doubts, file.Columns, file.Cells);

    /// <summary>Records, problems and cells.</summary>
    /// <returns>For example <c>96 records of 6 machines, 0 problems; 2 rows of problems; 40 cells: …</c>.</returns>
    public override string ToString() => $"{Records}; {Problems.Rows.Count} rows of problems; {Cells}";
}
