namespace OilCondition.LabFiles;

/// <summary>All rows of a file, by machine.</summary>
internal sealed class Collected<T>
{
    private readonly List<FileProblem> problems = [];
    private readonly List<FileProblem> doubts = [];
    private readonly List<string> machineIds = [];

    private Collected() { }

    public Dictionary<string, List<T>> OfMachine { get; } = new(StringComparer.Ordinal);

    public IReadOnlyList<string> MachineIds => machineIds;

    public IReadOnlyList<FileProblem> Problems => problems;

    public IReadOnlyList<FileProblem> Doubts => doubts;

    public static Collected<T> From(
        TableFile file,
        Func<ParsedRow, T> made,
        IProgress<FileProgress>? progress,
        CancellationToken cancellationToken
    )
    {
        var collected = new Collected<T>();
        foreach (var row in file.Rows(progress, cancellationToken))
        {
            collected.problems.AddRange(row.Problems);
            collected.doubts.AddRange(row.Doubts);
            if (row.IsTaken)
            {
                collected.Of(row.MachineId).Add(made(row));
            }
        }

        return collected;
    }

    private List<T> Of(string machineId)
    {
        if (!OfMachine.TryGetValue(machineId, out var records))
        {
            OfMachine.Add(machineId, records = []);
            machineIds.Add(machineId);
        }

        return records;
    }
}
