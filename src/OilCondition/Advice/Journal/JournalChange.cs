using OilCondition.Text;

namespace OilCondition;

/// <summary>What an assessment changes for one alert.</summary>
public sealed class JournalChange
{
    internal JournalChange(JournalChangeKind kind, JournalEntry entry, Alert? alert)
    {
        Kind = kind;
        Entry = entry;
        Alert = alert;
    }

    /// <summary>What changes.</summary>
    public JournalChangeKind Kind { get; }

    /// <summary>The entry after the change.</summary>
    public JournalEntry Entry { get; }

    /// <summary>The alert with its findings and their evidence; null when it was cleared.</summary>
    public Alert? Alert { get; }

    /// <summary>What changed, and the entry after it.</summary>
    /// <returns>For example <c>raised: M1/charge-1/wear: alarm, unacknowledged active, raised 2026-01-01</c>.</returns>
    public override string ToString() => $"{PlainText.Spaced(Kind)}: {Entry}";
}
