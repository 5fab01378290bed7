namespace OilCondition.LabFiles;

/// <summary>What is to be said of a file that was read as a whole, beside what it holds.</summary>
public abstract class FileResult
{
    private protected FileResult(
        string fileName,
        IReadOnlyList<string> machineIds,
        IReadOnlyList<FileProblem> problems,
        IReadOnlyList<FileProblem> doubts,
        TableFile file
    )
    {
        FileName = fileName;
        MachineIds = machineIds;
        Problems = problems;
        Doubts = doubts;
        Columns = file.Columns;
        Cells = file.Cells;
        TitleLines = file.TitleLines;
    }

    /// <summary>What the file is called.</summary>
    public string FileName { get; }

    /// <summary>The machines in the file, in order of appearance.</summary>
    public IReadOnlyList<string> MachineIds { get; }

    /// <summary>Everything that was not taken over, in order of the file.</summary>
    public IReadOnlyList<FileProblem> Problems { get; }

    /// <summary>What was taken over and is to be looked at: units that nobody states, times that came twice, sheets without a header.</summary>
    public IReadOnlyList<FileProblem> Doubts { get; }

    /// <summary>What each column was read as, in which unit and who said so.</summary>
    public IReadOnlyList<ColumnReport> Columns { get; }

    /// <summary>What became of every cell.</summary>
    public CellCounts Cells { get; }

    /// <summary>What stands above the header, such as the laboratory's name, line by line.</summary>
    public IReadOnlyList<string> TitleLines { get; }

    /// <summary>The columns as a table for the eye, with what is to be asked about them below it.</summary>
    /// <returns>Up to a hundred columns, one a line.</returns>
    public string ColumnTable() => LabFiles.ColumnTable.Of(Columns);

    /// <summary>Machines, problems and doubts.</summary>
    /// <returns>For example <c>lab.csv: 3 machines, 2 problems, 1 doubts; 40 cells: …</c>.</returns>
    public override string ToString() =>
        $"{FileName}: {MachineIds.Count} machines, {Problems.Count} problems, {Doubts.Count} doubts; {Cells}";
}
