using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>Which columns can be written to a file and come back as they were.</summary>
internal static class FileColumns
{
    private const string Allowed = "String, Double, Single, Int32, Int64, Boolean, DateTime in UTC or without a zone";

    /// <summary>How many rows are written at a time: no part of a file may have texts of 2³¹ bytes.</summary>
    public const int RowsOfPart = 1_000_000;

    /// <summary>A count of nanoseconds in 64 bits ends in 2262 and begins in 1677; whole years within.</summary>
    private const int FirstYear = 1678;
    private const int LastYear = 2261;

    /// <exception cref="ArgumentException">There are no columns, or some cannot be written: all of them are named.</exception>
    public static void Check(DataFrame frame)
    {
        List<string> faults =
        [
            .. frame.Columns.Count == 0 ? ["frame has no columns; allowed: 1 or more."] : Array.Empty<string>(),
            .. frame.Columns.Select(FaultOf).OfType<string>(),
        ];
        if (faults.Count > 0)
        {
            throw new ArgumentException(string.Join(" ", faults), nameof(frame));
        }
    }

    /// <summary>Empty columns to read those of a file into.</summary>
    /// <param name="columns">The name of each, the type as the file calls it, and an empty column of it; null where a frame has none.</param>
    /// <exception cref="FormatException">Columns of the file have no place in a frame: all of them are named.</exception>
    public static DataFrameColumn[] Empty(IEnumerable<(string Name, string Type, DataFrameColumn? Column)> columns)
    {
        var all = columns.ToList();
        List<string> faults =
        [
            .. all.Where(one => one.Column is null)
                .Select(one => $"column '{one.Name}' is {one.Type}; allowed: {Allowed}."),
            .. all.GroupBy(one => one.Name, StringComparer.Ordinal)
                .Where(same => same.Count() > 1)
                .Select(same => $"column '{same.Key}' is there {same.Count()} times; allowed: once."),
        ];
        return faults.Count > 0
            ? throw new FormatException($"The file is no frame: {string.Join(" ", faults)}")
            : [.. all.Select(one => one.Column!)];
    }

    private static string? FaultOf(DataFrameColumn column) =>
        column switch
        {
            StringDataFrameColumn
            or PrimitiveDataFrameColumn<double>
            or PrimitiveDataFrameColumn<float>
            or PrimitiveDataFrameColumn<int>
            or PrimitiveDataFrameColumn<long>
            or PrimitiveDataFrameColumn<bool> => null,
            PrimitiveDataFrameColumn<DateTime> moments => FaultOf(moments),
            _ => $"column '{column.Name}' is {column.DataType.Name}; allowed: {Allowed}.",
        };

    private static string? FaultOf(PrimitiveDataFrameColumn<DateTime> moments) =>
        FrameTimes.IsLocal(moments) ? FrameTimes.LocalFault([moments.Name])
        : moments.Where(moment => moment is not null).Select(moment => moment!.Value.Kind).Distinct().Count() > 1
            ? $"column '{moments.Name}' has times in UTC and times without a zone; allowed: one of them."
        : moments.Any(moment => moment is { Year: < FirstYear or > LastYear })
            ? FormattableString.Invariant(
                $"column '{moments.Name}' has times outside the years that a file holds; allowed: {FirstYear} to {LastYear}."
            )
        : null;
}
