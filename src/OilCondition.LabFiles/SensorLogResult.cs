namespace OilCondition.LabFiles;

/// <summary>What was read from a sensor log.</summary>
public sealed class SensorLogResult
{
    internal SensorLogResult(
        IReadOnlyList<SensorReading> readings,
        IReadOnlyList<FileProblem> problems,
        IReadOnlyList<UnmappedColumn> unmappedColumns,
        CellCounts cells
    )
    {
        Readings = readings;
        Problems = problems;
        UnmappedColumns = unmappedColumns;
        Cells = cells;
    }

    /// <summary>The readings in order of the file.</summary>
    public IReadOnlyList<SensorReading> Readings { get; }

    /// <summary>Everything that could not be taken over, in order of the file.</summary>
    public IReadOnlyList<FileProblem> Problems { get; }

    /// <summary>Columns that the column map does not know.</summary>
    public IReadOnlyList<UnmappedColumn> UnmappedColumns { get; }

    /// <summary>What became of every cell.</summary>
    public CellCounts Cells { get; }
}
