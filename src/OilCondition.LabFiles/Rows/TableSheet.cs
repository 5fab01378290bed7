using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>A sheet of a workbook, or any other table: its name and its rows.</summary>
/// <remarks>
/// The door for what is no text: <c>OilCondition.Spreadsheets</c> comes in by it, and so may a database. Rows are asked for once, one after
/// the other, and are not held.
/// </remarks>
public sealed class TableSheet
{
    /// <summary>A sheet.</summary>
    /// <param name="name">Its name, as problems name it.</param>
    /// <param name="rows">Its rows in order, titles and header included.</param>
    public TableSheet(string name, IEnumerable<TableRow> rows)
    {
        Name = Guard.NotBlank(name);
        Rows = Guard.NotNull(rows);
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Its rows.</summary>
    public IEnumerable<TableRow> Rows { get; }

    /// <summary>Its name.</summary>
    /// <returns>For example <c>sheet Results</c>.</returns>
    public override string ToString() => $"sheet {Name}";
}
