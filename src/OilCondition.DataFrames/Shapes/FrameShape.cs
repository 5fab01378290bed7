using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>What a frame is made of: the name of each column, its type, and what of a row stands there.</summary>
internal sealed class FrameShape<TRow>
{
    private readonly List<Func<IReadOnlyList<TRow>, DataFrameColumn>> columns = [];

    public FrameShape<TRow> Text(string name, Func<TRow, string?> of) =>
        With(rows => new StringDataFrameColumn(name, rows.Select(of)));

    /// <summary>A text that is null where there is none, so that nobody has to tell empty from missing.</summary>
    public FrameShape<TRow> Word(string name, Func<TRow, string?> of) =>
        Text(name, row => of(row) is { Length: > 0 } text ? text : null);

    public FrameShape<TRow> Number(string name, Func<TRow, double?> of) =>
        With(rows => new DoubleDataFrameColumn(name, rows.Select(of)));

    public FrameShape<TRow> Whole(string name, Func<TRow, int?> of) =>
        With(rows => new Int32DataFrameColumn(name, rows.Select(of)));

    public FrameShape<TRow> Flag(string name, Func<TRow, bool?> of) =>
        With(rows => new BooleanDataFrameColumn(name, rows.Select(of)));

    /// <summary>A moment in UTC. Frames have no type for a moment with its offset.</summary>
    public FrameShape<TRow> Moment(string name, Func<TRow, DateTimeOffset?> of) =>
        With(rows => new DateTimeDataFrameColumn(name, rows.Select(row => of(row)?.UtcDateTime)));

    /// <summary>A moment in UTC, and beside it the offset with which it was written, so that it comes back to the tick.</summary>
    public FrameShape<TRow> MomentWithOffset(Func<TRow, DateTimeOffset> of) =>
        Moment(FrameNames.AtUtc, row => of(row))
            .Whole(FrameNames.OffsetMinutes, row => (int)of(row).Offset.TotalMinutes);

    public DataFrame Of(IReadOnlyList<TRow> rows) => new(columns.Select(column => column(rows)));

    private FrameShape<TRow> With(Func<IReadOnlyList<TRow>, DataFrameColumn> column)
    {
        columns.Add(column);
        return this;
    }
}
