using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads CSV files of oil laboratories as they are really sent.</summary>
/// <remarks>
/// Headers are matched without regard to case and blanks; a unit in brackets or parentheses at a header's end counts before the map's.
/// Readings may be qualified (<c>&lt;10</c>, <c>&gt;200</c>, <c>≈</c>), not detected (<c>ND</c>), or blank (also <c>-</c>).
/// Every cell that cannot be taken over is reported with file, line, column, text and reason; all others are kept.
/// </remarks>
/// <example>
/// <code>
/// var file = LabFile.Read("samples.csv", ColumnMap.Default);
/// foreach (var problem in file.Problems) { Console.Error.WriteLine(problem); }
/// </code>
/// </example>
public static class LabFile
{
    /// <summary>Reads a file from disk. UTF-8, with or without byte order mark, or UTF-16 with one.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>Samples and problems.</returns>
    /// <exception cref="FormatException">The file is empty, of another kind, or lacks a required column.</exception>
    public static LabFileResult Read(string path, ColumnMap map)
    {
        Guard.NotBlank(path);
        using var reader = new StreamReader(path);
        return Read(reader, Path.GetFileName(path), map);
    }

    /// <summary>Reads a file from a text reader.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>Samples and problems.</returns>
    /// <exception cref="FormatException">The text is empty, of another kind, or lacks a required column.</exception>
    public static LabFileResult Read(TextReader reader, string fileName, ColumnMap map)
    {
        var table = ReadingTable.Read(
            Guard.NotNull(reader),
            Guard.NotBlank(fileName),
            Guard.NotNull(map),
            isLabFile: true
        );
        return new LabFileResult(
            table.Rows.ToLookup(row => row.MachineId, row => new OilSample(row.SampleNumber, row.At, row.Readings)),
            table.Problems,
            table.UnmappedColumns,
            table.Cells
        );
    }
}
