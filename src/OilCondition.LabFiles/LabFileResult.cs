namespace OilCondition.LabFiles;

/// <summary>What was read from a laboratory file.</summary>
public sealed class LabFileResult
{
    private readonly ILookup<string, OilSample> samples;

    internal LabFileResult(
        ILookup<string, OilSample> samples,
        IReadOnlyList<FileProblem> problems,
        IReadOnlyList<UnmappedColumn> unmappedColumns,
        CellCounts cells
    )
    {
        this.samples = samples;
        Problems = problems;
        UnmappedColumns = unmappedColumns;
        Cells = cells;
        MachineIds = [.. samples.Select(group => group.Key)];
    }

    /// <summary>The machines in the file, in order of appearance.</summary>
    public IReadOnlyList<string> MachineIds { get; }

    /// <summary>Everything that could not be taken over, in order of the file.</summary>
    public IReadOnlyList<FileProblem> Problems { get; }

    /// <summary>Columns that the column map does not know.</summary>
    public IReadOnlyList<UnmappedColumn> UnmappedColumns { get; }

    /// <summary>What became of every cell.</summary>
    public CellCounts Cells { get; }

    /// <summary>The samples of a machine.</summary>
    /// <param name="machineId">The machine's id as in the file.</param>
    /// <returns>The samples in order of the file; none for a machine that is not in it.</returns>
    public IReadOnlyList<OilSample> SamplesOf(string machineId) => [.. samples[machineId]];
}
