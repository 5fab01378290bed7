using System.Globalization;
using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>The columns of a frame as what they are to be read as. All that is missing or of another type is told at once.</summary>
/// <remarks>A column without a single value may be of any type: loaders guess one.</remarks>
internal sealed class FrameInput(DataFrame frame)
{
    private readonly List<string> faults = [];
    private readonly Dictionary<string, DataFrameColumn> columns = ByName(frame);

    /// <summary>A frame of 2³¹ rows or more overflows here, since no list holds its records.</summary>
    public int RowCount { get; } = (int)frame.Rows.Count;

    public IEnumerable<string> Names => columns.Keys;

    public Func<long, string?> Text(string name, bool isNeeded = false) =>
        Column(name, isNeeded) switch
        {
            null => static _ => null,
            StringDataFrameColumn texts => row => texts[row],
            { } column when column.DataType == typeof(string) => row => (string?)column[row],
            { } column => Refused<string?>(column, "String"),
        };

    public Func<long, double?> Number(string name, bool isNeeded = false)
    {
        if (Column(name, isNeeded) is not { } column)
        {
            return static _ => null;
        }

        return ColumnNumbers.Of(column, out var fault) ?? Refused<double?>(fault);
    }

    public Func<long, int?> Whole(string name) =>
        Column(name, isNeeded: false) switch
        {
            null => static _ => null,
            PrimitiveDataFrameColumn<int> whole => row => whole[row],
            PrimitiveDataFrameColumn<long> whole => row =>
                whole[row] is { } number ? (int)Math.Clamp(number, int.MinValue, int.MaxValue) : null,
            { } column => Refused<int?>(column, "Int32 or Int64"),
        };

    /// <summary>A moment in UTC. Times of a computer's own zone are refused: which zone that was is not in the frame.</summary>
    public Func<long, DateTime?> Moment(string name)
    {
        if (Column(name, isNeeded: true) is not { } column)
        {
            return static _ => null;
        }

        if (column is not PrimitiveDataFrameColumn<DateTime> moments)
        {
            return Refused<DateTime?>(column, "DateTime in UTC");
        }

        return FrameTimes.IsLocal(column) ? Refused<DateTime?>(FrameTimes.LocalFault([name])) : row => moments[row];
    }

    public void Fault(string fault) => faults.Add(fault);

    public void ThrowIfFaulty(string what)
    {
        if (faults.Count > 0)
        {
            throw new FormatException(
                $"The frame is no frame of {what}: {string.Join(" ", faults)} It has {(columns.Count == 0 ? "no columns" : string.Join(", ", columns.Keys))}."
            );
        }
    }

    /// <summary>A cell as text, for a message.</summary>
    public string Cell(long row, string name) =>
        columns.TryGetValue(name, out var column) && column[row] is { } cell
            ? cell is DateTime moment
                ? moment.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture)
                : Convert.ToString(cell, CultureInfo.InvariantCulture) ?? ""
            : "";

    public FrameProblem RefusedRow(long row, string name, string reason) =>
        new(row, name, Cell(row, name), $"the row is not taken over; {reason}");

    private DataFrameColumn? Column(string name, bool isNeeded)
    {
        if (!columns.TryGetValue(name, out var column))
        {
            if (isNeeded)
            {
                faults.Add($"column '{name}' is missing.");
            }

            return null;
        }

        return column.NullCount == column.Length ? null : column;
    }

    private Func<long, T> Refused<T>(DataFrameColumn column, string allowed) =>
        Refused<T>($"column '{column.Name}' is {column.DataType.Name}; allowed: {allowed}.");

    private Func<long, T> Refused<T>(string fault)
    {
        faults.Add(fault);
        return static _ => default!;
    }

    private static Dictionary<string, DataFrameColumn> ByName(DataFrame frame) =>
        frame.Columns.ToDictionary(column => column.Name, StringComparer.Ordinal);
}
