using System.Text;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Files, machines that go, old entries, and a run that should not have been.</summary>
public sealed partial class AlertJournal
{
    /// <summary>Reads a journal that <see cref="ToJson"/> wrote.</summary>
    /// <param name="json">The text.</param>
    /// <returns>The journal.</returns>
    /// <exception cref="FormatException">The text is no journal, or has entries that cannot be; the message says where.</exception>
    public static AlertJournal Parse(string json) => new(JournalJson.Read(Guard.NotNull(json)));

    /// <summary>Reads a journal from its file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <returns>The journal; the empty one when there is no such file yet.</returns>
    /// <exception cref="FormatException">The file is no journal; the message says where.</exception>
    public static AlertJournal Load(string path) =>
        File.Exists(Guard.NotBlank(path)) ? Parse(File.ReadAllText(path, Encoding.UTF8)) : Empty;

    /// <summary>Writes the journal to its file, all of it or nothing: a crash leaves the file as it was.</summary>
    /// <remarks>The text goes to a file beside it with <c>.new</c> at its end, reaches the disk, and takes the place of the old one in one step.</remarks>
    /// <param name="path">Path of the file.</param>
    public void Save(string path)
    {
        var beside = Guard.NotBlank(path) + ".new";
        var bytes = Encoding.UTF8.GetBytes(ToJson());
        using (var file = new FileStream(beside, FileMode.Create, FileAccess.Write))
        {
            file.Write(bytes, 0, bytes.Length);
            file.Flush(flushToDisk: true);
        }

#if NET
        File.Move(beside, path, overwrite: true);
#else
        if (File.Exists(path))
        {
            File.Replace(beside, path, null);
        }
        else
        {
            File.Move(beside, path);
        }
#endif
    }

    /// <summary>The journal as JSON, the same bytes for the same journal.</summary>
    /// <returns>Indented JSON.</returns>
    public string ToJson() => JournalJson.Of(Entries).ToString();

    /// <summary>Writes the document of <see cref="ToJson"/> in UTF-8 on one line, so that a file or a queue of many has one a line.</summary>
    /// <param name="stream">Where to; it is written to at once, line end and all, and stays open.</param>
    public void WriteJson(Stream stream) => JournalJson.Of(Entries).WriteTo(stream);

    /// <summary>Closes the alerts of a machine that was taken out of service.</summary>
    /// <param name="machineId">Its id.</param>
    /// <param name="at">When; in the years 1900 to 2199.</param>
    /// <returns>The new journal; the same when no alert of this machine holds.</returns>
    public AlertJournal Retire(string machineId, DateTimeOffset at)
    {
        Guard.Moment(at);
        return Each(
            Guard.NotBlank(machineId),
            entry => entry.IsActive ? entry.With(entry.Change(JournalChangeKind.MachineRetired, at)) : entry
        );
    }

    /// <summary>Forgets alerts whose condition has long gone, with all that happened to them. What waits for delivery stays.</summary>
    /// <param name="clearedBefore">Alerts that cleared before it are forgotten.</param>
    /// <returns>The new journal.</returns>
    public AlertJournal Prune(DateTimeOffset clearedBefore) =>
        Where(entry =>
            entry.IsActive || entry.ClearedAt >= clearedBefore || entry.Changes.Any(change => !change.IsConfirmed)
                ? entry
                : null
        );

    /// <summary>Takes back what runs changed that were dated after a moment, such as one with a clock at 2052.</summary>
    /// <remarks>
    /// An alert goes back to where it stood. Every one that changes by it gets a change <see cref="JournalChangeKind.TakenBack"/>, to be delivered with
    /// the state and severity that stand again: its work request may have been opened. What people acknowledged stays.
    /// </remarks>
    /// <param name="after">Changes by assessments after this moment are taken back.</param>
    /// <param name="at">When that is done; in the years 1900 to 2199.</param>
    /// <returns>The new journal.</returns>
    public AlertJournal TakeBack(DateTimeOffset after, DateTimeOffset at)
    {
        Guard.Moment(at);
        return Where(entry => TakenBack(entry, after, at));
    }

    private static JournalEntry TakenBack(JournalEntry entry, DateTimeOffset after, DateTimeOffset at)
    {
        var kept = entry.Changes.Where(one => !one.IsOfRun || one.At <= after).ToList();
        var seen = entry.LastSeenAt <= after ? entry.LastSeenAt : after;
        if (kept.Count == entry.Changes.Count)
        {
            return seen == entry.LastSeenAt ? entry : entry.Seen(seen, entry.Sentence);
        }

        var stands = default(JournalChange);
        var changes = new List<JournalChange>();
        foreach (var change in kept.Append(entry.Change(JournalChangeKind.TakenBack, at)))
        {
            // A taken-back change has the severity that stands again; an acknowledgement of what never was falls away.
            var next = change.Kind is JournalChangeKind.TakenBack or JournalChangeKind.Acknowledged
                ? change with
                {
                    Severity = stands?.Severity ?? change.Severity,
                }
                : change;
            if (next.After(stands) is { } possible)
            {
                stands = possible;
                changes.Add(possible);
            }
        }

        return new JournalEntry(entry.Key, seen, entry.Sentence, entry.WorkOrder, changes);
    }

    private AlertJournal Where(Func<JournalEntry, JournalEntry?> kept) =>
        new(Entries.Select(kept).OfType<JournalEntry>());

    private AlertJournal Each(string machineId, Func<JournalEntry, JournalEntry> changed)
    {
        var before = Of(machineId);
        IReadOnlyList<JournalEntry> after = [.. before.Select(changed)];
        return after.SequenceEqual(before) ? this : new AlertJournal(machines.SetItem(machineId, after));
    }
}
