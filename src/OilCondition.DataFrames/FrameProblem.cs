using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Something in a frame that was not taken over: where it stands, what stands there and why.</summary>
public sealed record FrameProblem
{
    internal FrameProblem(long row, string column, string text, string reason)
    {
        Row = row;
        Column = column;
        Text = PlainText.Cut(text.AsSpan());
        Reason = reason;
    }

    /// <summary>Row of the frame, counted from 0 as frames count.</summary>
    public long Row { get; }

    /// <summary>Name of the column.</summary>
    public string Column { get; }

    /// <summary>What stands there; empty for null.</summary>
    public string Text { get; }

    /// <summary>Why it was not taken over, and what is allowed.</summary>
    public string Reason { get; }

    /// <summary>One line for a log.</summary>
    /// <returns>For example <c>row 7, value: '-12': water content is -12 mg/kg; allowed: 0 to 500000 mg/kg</c>.</returns>
    public override string ToString() => $"row {Row}, {Column}: '{Text}': {Reason}";
}
