using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>A machine that does not fit, and by how much.</summary>
public sealed class Misfit
{
    internal Misfit(UnitTask task, MisfitReason reason, TimeSpan? shortBy, string text)
    {
        Task = task;
        Reason = reason;
        ShortBy = shortBy;
        Text = text;
    }

    /// <summary>The task.</summary>
    public UnitTask Task { get; }

    /// <summary>Why it does not fit.</summary>
    public MisfitReason Reason { get; }

    /// <summary>By how much: hours that the longest stretch lacks, or by which the latest end is passed; null where no stretch would help.</summary>
    public TimeSpan? ShortBy { get; }

    /// <summary>The same in words.</summary>
    public string Text { get; }

    /// <inheritdoc/>
    public override string ToString() => $"{Task.Id}: {Text}";

    internal static string Hours(TimeSpan span) => $"{PlainText.Number(span.TotalHours)} h";
}
