using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads files of oil laboratories as they are really sent.</summary>
/// <remarks>
/// Headers are matched without regard to case, blanks, brackets and hyphens; a unit behind the name, or in a row of units, counts before the map's.
/// Readings may be qualified (<c>&lt;10</c>, <c>&gt;200</c>, <c>≈</c>), not detected (<c>ND</c>), or blank (also <c>-</c>, <c>NA</c>).
/// Every cell that is not taken over is reported with file, line, column, text and reason; all others are kept, other columns as texts.
/// A unit that nobody states is assumed, and said to be; where the values can only be in another one, the column is not taken over.
/// </remarks>
/// <example>
/// <code>
/// var file = LabFile.Read("samples.csv", ColumnMap.Default);
/// foreach (var problem in file.Problems.Concat(file.Doubts)) { Console.Error.WriteLine(problem); }
/// </code>
/// </example>
public static class LabFile
{
    private const bool IsLabFile = true;

    /// <summary>Reads a file from disk. UTF-8, with or without byte order mark, UTF-16 with one, or the map's encoding.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="map">How to read it.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>Samples and problems.</returns>
    /// <exception cref="FormatException">The file is empty, of another kind, or lacks a required column: all that it lacks are named.</exception>
    public static LabFileResult Read(
        string path,
        ColumnMap map,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        using var file = TableFile.Open(Guard.NotBlank(path), Guard.NotNull(map), IsLabFile);
        return Read(file, Path.GetFileName(path), progress, cancellationToken);
    }

    /// <summary>Reads a file from a text reader.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>Samples and problems.</returns>
    /// <exception cref="FormatException">The text is empty, of another kind, or lacks a required column.</exception>
    public static LabFileResult Read(
        TextReader reader,
        string fileName,
        ColumnMap map,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        using var file = TableFile.Open(Guard.NotNull(reader), Guard.NotBlank(fileName), Guard.NotNull(map), IsLabFile);
        return Read(file, fileName, progress, cancellationToken);
    }

    /// <summary>Reads the sheets of a workbook, or other tables whose cells hold numbers and dates as such.</summary>
    /// <param name="sheets">The sheets; one without a header is passed over, and said to be.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>Samples and problems.</returns>
    /// <exception cref="FormatException">No sheet has the required columns.</exception>
    public static LabFileResult Read(
        IEnumerable<TableSheet> sheets,
        string fileName,
        ColumnMap map,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        using var file = TableFile.Open(Guard.NotNull(sheets), Guard.NotBlank(fileName), Guard.NotNull(map), IsLabFile);
        return Read(file, fileName, progress, cancellationToken);
    }

    /// <summary>Opens a file of any length, whose rows are then read one by one.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>The file, opened: dispose of it.</returns>
    /// <exception cref="FormatException">The file is empty, of another kind, or lacks a required column.</exception>
    public static FileReader<LabRow> Open(string path, ColumnMap map) =>
        new(TableFile.Open(Guard.NotBlank(path), Guard.NotNull(map), IsLabFile), row => new LabRow(row));

    /// <summary>Opens a text of any length, whose rows are then read one by one.</summary>
    /// <param name="reader">The text; it is not closed.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>The text, opened.</returns>
    /// <exception cref="FormatException">The text is empty, of another kind, or lacks a required column.</exception>
    public static FileReader<LabRow> Open(TextReader reader, string fileName, ColumnMap map) =>
        new(
            TableFile.Open(Guard.NotNull(reader), Guard.NotBlank(fileName), Guard.NotNull(map), IsLabFile),
            row => new LabRow(row)
        );

    /// <summary>Opens the sheets of a workbook, whose rows are then read one by one.</summary>
    /// <param name="sheets">The sheets; one without a header is passed over, and said to be.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>The workbook, opened.</returns>
    /// <exception cref="FormatException">No sheet has the required columns.</exception>
    public static FileReader<LabRow> Open(IEnumerable<TableSheet> sheets, string fileName, ColumnMap map) =>
        new(
            TableFile.Open(Guard.NotNull(sheets), Guard.NotBlank(fileName), Guard.NotNull(map), IsLabFile),
            row => new LabRow(row)
        );

    private static LabFileResult Read(
        TableFile file,
        string fileName,
        IProgress<FileProgress>? progress,
        CancellationToken cancellationToken
    ) =>
        new(
            fileName,
            Collected<OilSample>.From(
                file,
                row => new OilSample(row.SampleNumber, row.At, row.Readings!, row.Texts),
                progress,
                cancellationToken
            ),
            file
        );
}
