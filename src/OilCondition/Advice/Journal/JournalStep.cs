namespace OilCondition;

/// <summary>The journal after an assessment, and what changed.</summary>
public sealed class JournalStep
{
    internal JournalStep(AlertJournal journal, IReadOnlyList<JournalChange> changes)
    {
        Journal = journal;
        Changes = changes;
    }

    /// <summary>The journal to keep for the next time.</summary>
    public AlertJournal Journal { get; }

    /// <summary>What changed, gravest first; alerts that merely hold are among them.</summary>
    public IReadOnlyList<JournalChange> Changes { get; }
}
