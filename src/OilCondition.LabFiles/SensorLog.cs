using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads logs of sensors: a column with the time, one for each measurand, and one with the machine where a log is of several.</summary>
/// <remarks>
/// The rules for headers, units, numbers and problems are those of <see cref="LabFile"/>.
/// </remarks>
/// <example>
/// <code>
/// var log = SensorLog.Read("moisture.csv", ColumnMap.Default);
/// var readings = log.ReadingsOf("M1"); // log.Readings where the log names no machine
/// </code>
/// </example>
public static class SensorLog
{
    private const bool IsLabFile = false;

    /// <summary>Reads a file from disk. UTF-8, with or without byte order mark, UTF-16 with one, or the map's encoding.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="map">How to read it.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>Readings and problems.</returns>
    /// <exception cref="FormatException">The file is empty, of another kind, or lacks a required column: all that it lacks are named.</exception>
    public static SensorLogResult Read(
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
    /// <returns>Readings and problems.</returns>
    /// <exception cref="FormatException">The text is empty, of another kind, or lacks a required column.</exception>
    public static SensorLogResult Read(
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
    /// <returns>Readings and problems.</returns>
    /// <exception cref="FormatException">No sheet has the required columns.</exception>
    public static SensorLogResult Read(
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
    public static FileReader<SensorRow> Open(string path, ColumnMap map) =>
        new(TableFile.Open(Guard.NotBlank(path), Guard.NotNull(map), IsLabFile), row => new SensorRow(row));

    /// <summary>Opens a text of any length, whose rows are then read one by one.</summary>
    /// <param name="reader">The text; it is not closed.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>The text, opened.</returns>
    /// <exception cref="FormatException">The text is empty, of another kind, or lacks a required column.</exception>
    public static FileReader<SensorRow> Open(TextReader reader, string fileName, ColumnMap map) =>
        new(
            TableFile.Open(Guard.NotNull(reader), Guard.NotBlank(fileName), Guard.NotNull(map), IsLabFile),
            row => new SensorRow(row)
        );

    /// <summary>Opens the sheets of a workbook, whose rows are then read one by one.</summary>
    /// <param name="sheets">The sheets; one without a header is passed over, and said to be.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>The workbook, opened.</returns>
    /// <exception cref="FormatException">No sheet has the required columns.</exception>
    public static FileReader<SensorRow> Open(IEnumerable<TableSheet> sheets, string fileName, ColumnMap map) =>
        new(
            TableFile.Open(Guard.NotNull(sheets), Guard.NotBlank(fileName), Guard.NotNull(map), IsLabFile),
            row => new SensorRow(row)
        );

    private static SensorLogResult Read(
        TableFile file,
        string fileName,
        IProgress<FileProgress>? progress,
        CancellationToken cancellationToken
    ) =>
        new(
            fileName,
            Collected<SensorReading>.From(
                file,
                row => new SensorReading(row.At, row.Readings!),
                progress,
                cancellationToken
            ),
            file
        );
}
