using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Something in a file that was not taken over, or that is in doubt: where it is, what stands there and why.</summary>
public sealed record FileProblem
{
    internal FileProblem(
        string file,
        string sheet,
        int line,
        int columnNumber,
        string column,
        string text,
        string reason
    )
    {
        File = file;
        Sheet = sheet;
        Line = line;
        ColumnNumber = columnNumber;
        Column = PlainText.Cut(column.AsSpan());
        Text = text;
        Reason = reason;
    }

    /// <summary>The file.</summary>
    public string File { get; }

    /// <summary>The sheet of a workbook; empty for a file of one table.</summary>
    public string Sheet { get; }

    /// <summary>Line of the file, or row of the sheet, where the record begins; counted from 1.</summary>
    public int Line { get; }

    /// <summary>Number of the column, counted from 1; 0 when the whole row is concerned.</summary>
    public int ColumnNumber { get; }

    /// <summary>Header of the column; empty when the whole row is concerned.</summary>
    public string Column { get; }

    /// <summary>What the file says there. Of more than 200 characters it has the beginning, and says how many there are.</summary>
    public string Text { get; }

    /// <summary>Why it was not taken over or is in doubt, and what was expected.</summary>
    public string Reason { get; }

    /// <summary>One line for a log.</summary>
    /// <returns>Place, column, text and reason; for example <c>lab.csv:2, Water: '-12': …</c> or <c>lab.xlsx, Results!D2, Water: …</c>.</returns>
    public override string ToString() => $"{Place}{(Column.Length == 0 ? "" : ", " + Column)}: '{Text}': {Reason}";

    private string Place =>
        Sheet.Length == 0 ? $"{File}:{Line}"
        : ColumnNumber == 0 ? $"{File}, {Sheet} row {Line}"
        : $"{File}, {Sheet}!{Letters(ColumnNumber)}{Line}";

    /// <summary>A, B … Z, AA, AB …</summary>
    private static string Letters(int number) =>
        (number > 26 ? Letters((number - 1) / 26) : "") + (char)('A' + (number - 1) % 26);
}
