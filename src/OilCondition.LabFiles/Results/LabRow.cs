namespace OilCondition.LabFiles;

/// <summary>One row of a laboratory file as it is read: its sample, or why there is none.</summary>
/// <remarks>The first row of each table is its header: it has no sample, and says what is to be said of the columns.</remarks>
public sealed class LabRow
{
    internal LabRow(ParsedRow row)
    {
        Sheet = row.Sheet;
        Line = row.Line;
        MachineId = row.IsTaken ? row.MachineId : "";
        Sample = row.IsTaken ? new OilSample(row.SampleNumber, row.At, row.Readings!, row.Texts) : null;
        Problems = row.Problems;
        Doubts = row.Doubts;
    }

    /// <summary>The sheet of a workbook; empty for a file of one table.</summary>
    public string Sheet { get; }

    /// <summary>Line of the file, or row of the sheet, where the record begins; counted from 1.</summary>
    public int Line { get; }

    /// <summary>The machine's id; empty where there is no sample.</summary>
    public string MachineId { get; }

    /// <summary>The sample; null for a header and for a row that was not taken over.</summary>
    public OilSample? Sample { get; }

    /// <summary>What of the row was not taken over, and why.</summary>
    public IReadOnlyList<FileProblem> Problems { get; }

    /// <summary>What was taken over and is to be looked at.</summary>
    public IReadOnlyList<FileProblem> Doubts { get; }

    /// <summary>Line, machine and sample.</summary>
    /// <returns>For example <c>line 2: M1, S1 of 2026-03-14, 0 problems</c>.</returns>
    public override string ToString() =>
        $"line {Line}: {(Sample is null ? "no sample" : $"{MachineId}, {Sample}")}, {Problems.Count} problems";
}
