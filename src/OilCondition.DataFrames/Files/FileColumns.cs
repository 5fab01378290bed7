using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>Which columns can be written to a file and come back as they were.</summary>
internal static class FileColumns
{
    private const string Allowed = "String, Double, Single, Int32, Int64, Boolean, DateTime in UTC or without a zone";

    /// <summary>A count of nanoseconds in 64 bits ends in 2262 and begins in 1677; whole years within.</summary>
    private const int FirstYear = 1678;
    private const int LastYear = 2261;

    /// <exception cref="ArgumentException">Columns cannot be written: all of them are named.</exception>
    public static void Check(DataFrame frame)
    {
        var faults = frame.Columns.Select(FaultOf).OfType<string>().ToList();
        if (faults.Count > 0)
        {
            throw new ArgumentException(string.Join(" ", faults), nameof(frame));
        }
    }

    /// <exception cref="FormatException">Columns of the file have no place in a frame: all of them are named.</exception>
    public static void Check(IEnumerable<string> refused)
    {
        var faults = refused.ToList();
        if (faults.Count > 0)
        {
            throw new FormatException(
                $"The file has columns of types that a frame has not: {string.Join(", ", faults)}; allowed: {Allowed}."
            );
        }
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
