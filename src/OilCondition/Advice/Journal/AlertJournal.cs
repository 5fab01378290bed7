using System.Collections.Immutable;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Remembers which alerts are open and what of them is not yet delivered, so that a problem reaches the maintenance system once.</summary>
/// <remarks>
/// <para>
/// Immutable. The order of steps is: load, reconcile, save; then for each pending change deliver, confirm, save. A crash before the first save
/// changes nothing, and the next run finds the same. A crash between delivering and confirming delivers the same change again, with the same
/// <see cref="JournalChange.Id"/>: look it up before you open a work request. One process at a time keeps a journal.
/// </para>
/// <para>
/// Running the same assessment again changes nothing. Against flapping an alert that no longer shows is only cleared when the clear delay has passed
/// since it was last seen. An alert of an oil charge that is no longer in the machine is cleared at once.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var journal = AlertJournal.Load(path).Reconcile(assessments);
/// journal.Save(path);
/// foreach (var change in journal.Pending)
/// {
///     var workOrder = Deliver(change);
///     journal = journal.Confirm(change.Id, workOrder);
///     journal.Save(path);
/// }
/// </code>
/// </example>
public sealed partial class AlertJournal
{
    private readonly ImmutableDictionary<string, IReadOnlyList<JournalEntry>> machines;
    private readonly Lazy<IReadOnlyList<JournalEntry>> entries;

    private AlertJournal(ImmutableDictionary<string, IReadOnlyList<JournalEntry>> machines)
    {
        this.machines = machines;
        entries = new Lazy<IReadOnlyList<JournalEntry>>(() =>
            [.. machines.Values.SelectMany(one => one).OrderBy(entry => entry.Key, StringComparer.Ordinal)]
        );
    }

    private AlertJournal(IEnumerable<JournalEntry> entries)
        : this(
            entries
                .GroupBy(entry => entry.MachineId, StringComparer.Ordinal)
                .ToImmutableDictionary(
                    machine => machine.Key,
                    machine => (IReadOnlyList<JournalEntry>)[.. machine],
                    StringComparer.Ordinal
                )
        ) { }

    /// <summary>A journal in which nothing is written.</summary>
    public static AlertJournal Empty { get; } = new(Enumerable.Empty<JournalEntry>());

    /// <summary>Every alert that was raised and not pruned, in the order of the keys, each key once.</summary>
    public IReadOnlyList<JournalEntry> Entries => entries.Value;

    /// <summary>
    /// What is not yet confirmed as delivered, in order of time; of one moment the gravest first. The changes of one alert stay in the order in which they
    /// were noted, also where a moment that was stated lies before that of a run.
    /// </summary>
    public IReadOnlyList<JournalChange> Pending =>
        [
            .. Entries
                .SelectMany(entry => entry.InOrder())
                .Where(one => !one.Change.IsConfirmed)
                .OrderBy(one => one.NotBefore)
                .ThenByDescending(one => one.Change.Severity)
                .Select(one => one.Change),
        ];

    /// <summary>The alert with a key; null when there is none.</summary>
    /// <param name="key">The key.</param>
    /// <returns>The entry.</returns>
    public JournalEntry? Find(string key) =>
        AlertKey.Parse(Guard.NotBlank(key)) is { } parts
            ? Of(parts.MachineId).FirstOrDefault(entry => string.Equals(entry.Key, key, StringComparison.Ordinal))
            : null;

    /// <summary>Reconciles an assessment with the journal.</summary>
    /// <param name="assessment">The assessment of one machine; entries of other machines stay as they are.</param>
    /// <param name="clearDelay">How long an alert must be gone before it is cleared, up to ten years; none by default.</param>
    /// <returns>The journal to keep; what changed is among its pending changes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The assessment is older than what the journal knows of this machine, or the delay lies outside its range.
    /// </exception>
    public AlertJournal Reconcile(ConditionAssessment assessment, TimeSpan? clearDelay = null) =>
        Reconcile([Guard.NotNull(assessment)], clearDelay);

    /// <summary>Reconciles the assessments of a fleet with the journal, all of them or, where one is refused, none.</summary>
    /// <param name="assessments">One assessment a machine, in any order; entries of other machines stay as they are.</param>
    /// <param name="clearDelay">How long an alert must be gone before it is cleared, up to ten years; none by default.</param>
    /// <returns>The journal to keep; what changed is among its pending changes.</returns>
    /// <exception cref="ArgumentException">Two assessments are of one machine id.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An assessment is older than what the journal knows of its machine, or the delay lies outside its range.
    /// </exception>
    public AlertJournal Reconcile(IEnumerable<ConditionAssessment> assessments, TimeSpan? clearDelay = null)
    {
        Guard.NotNull(assessments);
        var delay = TimeSpan.FromDays(Guard.InRange(clearDelay?.TotalDays ?? 0, 0, 3653, "d", nameof(clearDelay)));
        var after = machines.ToBuilder();
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var assessment in assessments)
        {
            Guard.NotNull(assessment, nameof(assessments));
            var id = assessment.History.Machine.Id;
            if (!done.Add(id))
            {
                throw new ArgumentException(
                    $"assessments holds machine '{id}' twice; one assessment a machine is allowed.",
                    nameof(assessments)
                );
            }

            var known = Of(id);
            InOrder(assessment, known);
            var now = Reconciliation.Of(assessment, known, delay);
            if (now.Count > 0)
            {
                after[id] = now;
            }
        }

        return new AlertJournal(after.ToImmutable());
    }

    /// <summary>Notes that a change was delivered.</summary>
    /// <param name="changeId">The <see cref="JournalChange.Id"/> of the change.</param>
    /// <param name="workOrder">Reference of the work request; empty to leave the alert's as it is.</param>
    /// <returns>The new journal; the same when it was confirmed already.</returns>
    /// <exception cref="ArgumentException">The journal has no such change.</exception>
    public AlertJournal Confirm(string changeId, string workOrder = "")
    {
        Guard.NotBlank(changeId);
        Guard.NotNull(workOrder);
        var at = changeId.LastIndexOf('@');
        var entry = at > 0 ? Find(changeId.Substring(0, at)) : null;
        var change = entry?.Changes.FirstOrDefault(one => string.Equals(one.Id, changeId, StringComparison.Ordinal));
        if (entry is null || change is null)
        {
            throw new ArgumentException($"changeId is '{changeId}'; the journal has no such change.", nameof(changeId));
        }

        return change.IsConfirmed && workOrder.Length == 0
            ? this
            : With(
                entry.With(
                    [
                        .. entry.Changes.Select(one =>
                            ReferenceEquals(one, change) ? one with { IsConfirmed = true } : one
                        ),
                    ],
                    workOrder.Length == 0 ? entry.WorkOrder : workOrder
                )
            );
    }

    /// <summary>Notes that somebody has taken an alert on.</summary>
    /// <param name="key">Its key.</param>
    /// <param name="by">Who.</param>
    /// <param name="at">When; in the years 1900 to 2199.</param>
    /// <param name="workOrder">Reference of the work request; empty to leave it as it is.</param>
    /// <returns>The new journal; the same when it was acknowledged already.</returns>
    /// <exception cref="ArgumentException">The journal has no such key, or nobody is named.</exception>
    public AlertJournal Acknowledge(string key, string by, DateTimeOffset at, string workOrder = "")
    {
        Guard.NotBlank(by);
        Guard.Moment(at);
        Guard.NotNull(workOrder);
        var entry =
            Find(key) ?? throw new ArgumentException($"key is '{key}'; the journal has no such alert.", nameof(key));
        var acknowledged = entry.State is AlertState.UnacknowledgedActive or AlertState.ReturnedUnacknowledged
            ? entry.With(entry.Change(JournalChangeKind.Acknowledged, at) with { By = by, IsConfirmed = true })
            : entry;
        return acknowledged == entry && workOrder.Length == 0
            ? this
            : With(acknowledged.With(acknowledged.Changes, workOrder.Length == 0 ? entry.WorkOrder : workOrder));
    }

    private IReadOnlyList<JournalEntry> Of(string machineId) =>
        machines.TryGetValue(machineId, out var known) ? known : [];

    private AlertJournal With(JournalEntry entry) =>
        new(
            machines.SetItem(
                entry.MachineId,
                [.. Of(entry.MachineId).Select(one => one.Key == entry.Key ? entry : one)]
            )
        );

    private static void InOrder(ConditionAssessment assessment, IReadOnlyList<JournalEntry> known)
    {
        var asOf = assessment.Options.AsOf;
        var latest = known.Select(entry => entry.LatestRun).DefaultIfEmpty().Max();
        if (asOf < latest)
        {
            throw new ArgumentOutOfRangeException(
                nameof(assessment),
                $"The assessment is of {asOf:u}, but the journal knows {assessment.History.Machine.Id} up to {latest:u}. "
                    + "Reconcile in order of time; take back a run that was dated wrongly."
            );
        }
    }

    /// <summary>How many alerts it knows, how many of them hold, and how many changes wait for delivery.</summary>
    /// <returns>For example <c>12 alerts, 3 active, 1 to be delivered</c>.</returns>
    public override string ToString() =>
        $"{Entries.Count} alerts, {Entries.Count(entry => entry.IsActive)} active, {Pending.Count} to be delivered";
}
