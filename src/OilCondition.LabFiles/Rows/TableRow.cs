using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>A row of a sheet or of any other table: its number and what its cells hold.</summary>
public sealed class TableRow
{
    /// <summary>A row.</summary>
    /// <param name="number">Number of the row in its table, counted from 1, as problems name it.</param>
    /// <param name="cells">
    /// What the cells hold: texts, numbers (double, int, long, decimal), dates (<see cref="DateTime"/>), or null for a blank one. A cell of any
    /// other kind counts as its text.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public TableRow(int number, IReadOnlyList<object?> cells)
    {
        Number = (int)Guard.InRange(number, 1, int.MaxValue, "");
        Cells = Guard.NotNull(cells);
    }

    /// <summary>Number of the row, counted from 1.</summary>
    public int Number { get; }

    /// <summary>What its cells hold.</summary>
    public IReadOnlyList<object?> Cells { get; }

    /// <summary>Number and cells.</summary>
    /// <returns>For example <c>row 2: M1, S1, 123</c>.</returns>
    public override string ToString() => $"row {Number}: {string.Join(", ", Cells)}";
}
