namespace OilCondition.LabFiles;

/// <summary>What was read from a laboratory file.</summary>
public sealed class LabFileResult : FileResult
{
    private readonly Dictionary<string, List<OilSample>> samples;

    internal LabFileResult(string fileName, Collected<OilSample> read, TableFile file)
        : base(fileName, read.MachineIds, read.Problems, read.Doubts, file) => samples = read.OfMachine;

    /// <summary>The samples of a machine.</summary>
    /// <param name="machineId">The machine's id as in the file.</param>
    /// <returns>The samples in order of the file; none for a machine that is not in it.</returns>
    public IReadOnlyList<OilSample> SamplesOf(string machineId) =>
        samples.TryGetValue(machineId, out var found) ? found : [];
}
