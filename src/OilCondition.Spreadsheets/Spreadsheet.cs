using OilCondition.LabFiles;
using OilCondition.Text;

namespace OilCondition.Spreadsheets;

/// <summary>Reads workbooks (.xlsx) of oil laboratories and sensors, by the same column maps as text files.</summary>
/// <remarks>
/// Dates and numbers are taken as cells hold them, and of formulas the results that were saved with them. Rows are read one by one. A workbook is
/// never written, and nothing that it links to is opened. Problems name sheet and cell.
/// </remarks>
/// <example>
/// <code>
/// var file = Spreadsheet.ReadLabFile("results.xlsx", ColumnMap.Default);
/// var samples = file.SamplesOf("M1");
/// </code>
/// </example>
public static class Spreadsheet
{
    /// <summary>Reads the samples of all sheets.</summary>
    /// <param name="path">Path of the workbook.</param>
    /// <param name="map">How to read it.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>Samples and problems.</returns>
    /// <exception cref="FormatException">The file is no workbook, or no sheet of it has the required columns.</exception>
    public static LabFileResult ReadLabFile(
        string path,
        ColumnMap map,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    ) => LabFile.Read(Sheets(path), Path.GetFileName(path), map, progress, cancellationToken);

    /// <summary>Opens a workbook of any length, whose samples are then read row by row.</summary>
    /// <param name="path">Path of the workbook.</param>
    /// <param name="map">How to read it.</param>
    /// <returns>The workbook, opened: dispose of it.</returns>
    /// <exception cref="FormatException">The file is no workbook, or no sheet of it has the required columns.</exception>
    public static FileReader<LabRow> OpenLabFile(string path, ColumnMap map) =>
        LabFile.Open(Sheets(path), Path.GetFileName(path), map);

    /// <summary>Reads the sensor readings of all sheets.</summary>
    /// <param name="path">Path of the workbook.</param>
    /// <param name="map">How to read it.</param>
    /// <param name="progress">Is told every 10,000 rows, and at the end, how far it is; null for nobody.</param>
    /// <param name="cancellationToken">Stops between two rows.</param>
    /// <returns>Readings and problems.</returns>
    /// <exception cref="FormatException">The file is no workbook, or no sheet of it has the required columns.</exception>
    public static SensorLogResult ReadSensorLog(
        string path,
        ColumnMap map,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    ) => SensorLog.Read(Sheets(path), Path.GetFileName(path), map, progress, cancellationToken);

    /// <summary>The sheets of a workbook, whose rows are read as they are asked for; the file is closed behind the last one.</summary>
    /// <param name="path">Path of the workbook.</param>
    /// <returns>The sheets, in the order of the workbook.</returns>
    /// <exception cref="FormatException">The file is no workbook; told when the sheets are asked for.</exception>
    public static IEnumerable<TableSheet> Sheets(string path) => Workbook.Sheets(Guard.NotBlank(path));
}
