using System.Security.Cryptography;
using System.Text;
using OilCondition;
using OilCondition.LabFiles;

namespace MaintenanceBridge;

/// <summary>Something that was received: kept as it came, and read again whenever it is needed. The same bytes of the same kind are one receipt.</summary>
public sealed record Received(string Id, ReceivedKind Kind, string Name, string MachineId, string Content)
{
    public static Received Of(ReceivedKind kind, string name, string machineId, string content) =>
        new(
            Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(kind + "\n" + machineId + "\n" + content))),
            kind,
            name,
            machineId,
            content
        );

    /// <summary>What is in it, by machine, with everything that could not be taken over.</summary>
    public Records Read()
    {
        using var text = new StringReader(Content);
        switch (Kind)
        {
            case ReceivedKind.LaboratoryFile:
                var lab = LabFile.Read(text, Name, ColumnMap.Default);
                return new Records(
                    lab.MachineIds.ToDictionary(id => id, lab.SamplesOf),
                    new Dictionary<string, IReadOnlyList<SensorReading>>(),
                    Told(lab)
                );
            case ReceivedKind.SensorLog:
                var log = SensorLog.Read(text, Name, ColumnMap.Default);
                var ofMachine = log.MachineIds.Where(id => id.Length > 0).ToDictionary(id => id, log.ReadingsOf);
                return new Records(
                    new Dictionary<string, IReadOnlyList<OilSample>>(),
                    ofMachine.Count > 0
                        ? ofMachine
                        : new Dictionary<string, IReadOnlyList<SensorReading>> { [MachineId] = log.Readings },
                    Told(log)
                );
            default:
                var history = OilHistory.Parse(Content);
                var id = history.Machine.Id;
                return new Records(
                    new Dictionary<string, IReadOnlyList<OilSample>> { [id] = history.Samples },
                    new Dictionary<string, IReadOnlyList<SensorReading>> { [id] = history.SensorReadings },
                    [
                        .. history.Issues.Select(issue => issue.ToString()),
                        .. history.Events.Select(one => $"{one}: not taken over; events stand in the station file"),
                    ]
                );
        }
    }

    private static List<string> Told(FileResult file) =>
        [.. file.Problems.Concat(file.Doubts).Select(problem => problem.ToString())];
}
