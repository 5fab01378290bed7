namespace OilCondition.LabFiles;

/// <summary>One row of a sensor log as it is read: its reading, or why there is none.</summary>
/// <remarks>The first row of each table is its header: it has no reading, and says what is to be said of the columns.</remarks>
public sealed class SensorRow
{
    private static readonly IReadOnlyDictionary<string, string> NoTexts = new Dictionary<string, string>();

    internal SensorRow(ParsedRow row)
    {
        Sheet = row.Sheet;
        Line = row.Line;
        MachineId = row.IsTaken ? row.MachineId : "";
        Reading = row.IsTaken ? new SensorReading(row.At, row.Readings!) : null;
        Texts = row.Texts ?? NoTexts;
        Problems = row.Problems;
        Doubts = row.Doubts;
    }

    /// <summary>The sheet of a workbook; empty for a file of one table.</summary>
    public string Sheet { get; }

    /// <summary>Line of the file, or row of the sheet; counted from 1.</summary>
    public int Line { get; }

    /// <summary>The machine's id; empty where the log names none.</summary>
    public string MachineId { get; }

    /// <summary>What the sensors read; null for a header and for a row that was not taken over.</summary>
    public SensorReading? Reading { get; }

    /// <summary>What stands in other columns, such as a status, by header.</summary>
    public IReadOnlyDictionary<string, string> Texts { get; }

    /// <summary>What of the row was not taken over, and why.</summary>
    public IReadOnlyList<FileProblem> Problems { get; }

    /// <summary>What was taken over and is to be looked at.</summary>
    public IReadOnlyList<FileProblem> Doubts { get; }

    /// <summary>Line, machine and reading.</summary>
    /// <returns>For example <c>line 2: M1, 2025-12-10 06:15: oil temperature 60 °C, 0 problems</c>.</returns>
    public override string ToString() =>
        $"line {Line}: {(Reading is null ? "no reading" : $"{MachineId}, {Reading}")}, {Problems.Count} problems";
}
