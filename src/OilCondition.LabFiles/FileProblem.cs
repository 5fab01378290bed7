namespace OilCondition.LabFiles;

/// <summary>Something in a file that could not be taken over, where it is and why.</summary>
public sealed record FileProblem
{
    internal FileProblem(string file, int line, string column, string text, string reason)
    {
        File = file;
        Line = line;
        Column = column;
        Text = text;
        Reason = reason;
    }

    /// <summary>The file.</summary>
    public string File { get; }

    /// <summary>Line in the file, counted from 1, where the record begins.</summary>
    public int Line { get; }

    /// <summary>Header of the column; empty when the whole row is concerned.</summary>
    public string Column { get; }

    /// <summary>What the file says there, unchanged.</summary>
    public string Text { get; }

    /// <summary>Why it was not taken over, and what was expected.</summary>
    public string Reason { get; }

    /// <summary>One line for a log.</summary>
    /// <returns>File, line, column, text and reason.</returns>
    public override string ToString() =>
        Column.Length == 0 ? $"{File}:{Line}: '{Text}': {Reason}" : $"{File}:{Line}, {Column}: '{Text}': {Reason}";
}
