using System.Globalization;
using Microsoft.Data.Analysis;
using OilCondition.LabFiles;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>What is done with frames from one step to the next.</summary>
public static class FrameExtensions
{
    /// <summary>The columns of a frame and of what was computed from it, in one new frame. Cells are copied only where a prefix asks for other names.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="computed">Columns of the same length, such as those of <see cref="WaterColumns"/>.</param>
    /// <param name="prefix">What their names are to begin with, where a name is taken; empty for nothing.</param>
    /// <returns>A new frame; both given ones stay as they are.</returns>
    /// <exception cref="ArgumentException">Lengths differ, or names are taken: all of them are named.</exception>
    public static DataFrame With(this DataFrame frame, DataFrame computed, string prefix = "")
    {
        Guard.NotNull(frame);
        Guard.NotNull(computed);
        Guard.NotNull(prefix);
        var names = frame.Columns.Select(column => column.Name).ToHashSet(StringComparer.Ordinal);
        var taken = computed.Columns.Select(column => prefix + column.Name).Where(names.Contains).ToList();
        if (taken.Count > 0)
        {
            throw new ArgumentException(
                $"The frame has columns of these names: {string.Join(", ", taken)}; state a prefix.",
                nameof(computed)
            );
        }

        if (computed.Rows.Count != frame.Rows.Count)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"computed has {computed.Rows.Count} rows, frame has {frame.Rows.Count}; both must have the same length."
                ),
                nameof(computed)
            );
        }

        return new DataFrame(frame.Columns.Concat(computed.Columns.Select(column => Renamed(column, prefix))));
    }

    /// <summary>The plain values of a measurand in a wide frame: null where a reading is only a bound (<c>&lt;</c>, <c>&gt;</c>).</summary>
    /// <param name="frame">A frame as <see cref="OilRecords.ToWideFrame"/> makes it.</param>
    /// <param name="measurand">The measurand.</param>
    /// <returns>A new column of the same length and name; all null where no record has the measurand.</returns>
    /// <exception cref="FormatException">The column or its qualifiers are of another type.</exception>
    public static DoubleDataFrameColumn ValuesOf(this DataFrame frame, Measurand measurand)
    {
        var input = new FrameInput(Guard.NotNull(frame));
        var name = FrameNames.ValueOf(Guard.NotNull(measurand));
        var value = input.Number(name);
        var qualifier = input.Text(FrameNames.QualifierOf(measurand));
        input.ThrowIfFaulty("records");
        return new DoubleDataFrameColumn(
            name,
            Enumerable.Range(0, input.RowCount).Select(row => qualifier(row) is "<" or ">" ? null : value(row))
        );
    }

    /// <summary>A frame as a table for <see cref="LabFile"/> and <see cref="SensorLog"/>, which know headers, units and qualifiers as they are really written.</summary>
    /// <remarks>
    /// The way in for frames that come from elsewhere, numbers in texts included. The header is row 1, so that row n of the frame is row n + 2 of the table.
    /// </remarks>
    /// <param name="frame">The frame.</param>
    /// <param name="name">What the table is called in problems.</param>
    /// <returns>The table; its cells are read when they are asked for.</returns>
    /// <exception cref="ArgumentException">Columns have times of a computer's own zone: all of them are named.</exception>
    /// <example>
    /// <code>
    /// var file = LabFile.Read([frame.ToTableSheet("samples")], "frame", ColumnMap.Default);
    /// </code>
    /// </example>
    public static TableSheet ToTableSheet(this DataFrame frame, string name)
    {
        var local = Guard.NotNull(frame).Columns.Where(FrameTimes.IsLocal).Select(column => column.Name).ToList();
        return local.Count > 0
            ? throw new ArgumentException(FrameTimes.LocalFault(local), nameof(frame))
            : new TableSheet(Guard.NotBlank(name), TableRows(frame));
    }

    private static IEnumerable<TableRow> TableRows(DataFrame frame)
    {
        DataFrameColumn[] columns = [.. frame.Columns];
        yield return new TableRow(1, Array.ConvertAll(columns, column => (object?)column.Name));
        for (var row = 0; row < frame.Rows.Count; row++)
        {
            yield return new TableRow(row + 2, Array.ConvertAll(columns, column => Cell(column[row])));
        }
    }

    /// <summary>A Single as the decimal that it was read from, a moment in UTC with its offset, all else as it is.</summary>
    private static object? Cell(object? cell) =>
        cell switch
        {
            float number => number.ToString("R", CultureInfo.InvariantCulture),
            DateTime { Kind: DateTimeKind.Utc } moment => moment.ToString("O", CultureInfo.InvariantCulture),
            byte or short or sbyte or ushort or uint or ulong => Convert.ToDecimal(cell, CultureInfo.InvariantCulture),
            _ => cell,
        };

    private static DataFrameColumn Renamed(DataFrameColumn column, string prefix)
    {
        if (prefix.Length == 0)
        {
            return column;
        }

        var renamed = column.Clone(0);
        renamed.SetName(prefix + column.Name);
        return renamed;
    }
}
