using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads CSV logs of the sensors of one machine: a column with the time, and one for each measurand.</summary>
/// <remarks>The rules for headers, units, numbers and problems are those of <see cref="LabFile"/>.</remarks>
public static class SensorLog
{
    /// <summary>Reads a log from disk. UTF-8, with or without byte order mark, or UTF-16 with one.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>Readings and problems.</returns>
    /// <exception cref="FormatException">The file is empty, of another kind, or lacks the column with the time.</exception>
    public static SensorLogResult Read(string path, ColumnMap map)
    {
        Guard.NotBlank(path);
        using var reader = new StreamReader(path);
        return Read(reader, Path.GetFileName(path), map);
    }

    /// <summary>Reads a log from a text reader.</summary>
    /// <param name="reader">The text.</param>
    /// <param name="fileName">What the file is called in problems.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>Readings and problems.</returns>
    /// <exception cref="FormatException">The text is empty, of another kind, or lacks the column with the time.</exception>
    public static SensorLogResult Read(TextReader reader, string fileName, ColumnMap map)
    {
        var table = ReadingTable.Read(
            Guard.NotNull(reader),
            Guard.NotBlank(fileName),
            Guard.NotNull(map),
            isLabFile: false
        );
        return new SensorLogResult(
            [.. table.Rows.Select(row => new SensorReading(row.At, row.Readings))],
            table.Problems,
            table.UnmappedColumns,
            table.Cells
        );
    }
}
