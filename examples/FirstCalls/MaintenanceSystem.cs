using OilCondition;

namespace FirstCalls;

/// <summary>Stands for the maintenance system: it keeps work requests, and with each the ids of the changes that reached it.</summary>
public sealed class MaintenanceSystem
{
    private readonly Dictionary<string, string> delivered = [];
    private readonly Dictionary<string, WorkRequest> requests = [];

    public IReadOnlyDictionary<string, WorkRequest> Requests => requests;

    /// <summary>Brings the work request of an alert to where the alert stands. A change that came before changes nothing.</summary>
    public string Deliver(JournalChange change)
    {
        if (delivered.TryGetValue(change.Id, out var known))
        {
            return known;
        }

        var last = requests.Values.LastOrDefault(request => request.Key == change.Key);
        var number = last is { IsOpen: true } || (last is not null && !change.IsActive) ? last.Number : "";
        if (number.Length == 0 && change.IsActive)
        {
            number = $"WR-{requests.Count + 1}";
        }

        if (number.Length > 0)
        {
            requests[number] = new WorkRequest(number, change.Key, change.IsActive, change.Severity, change.Sentence);
        }

        delivered.Add(change.Id, number);
        return number;
    }
}
