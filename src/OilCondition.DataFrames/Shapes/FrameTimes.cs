using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>Times in frames: in UTC, or without a zone. Those of a computer's own zone say nothing elsewhere, and loaders make them of text with an offset.</summary>
internal static class FrameTimes
{
    public static bool IsLocal(DataFrameColumn column) => Has(column, DateTimeKind.Local);

    /// <summary>Whether the times of a column are in UTC; false where they have no zone. A column without any is in UTC, so that files of one kind have one type.</summary>
    public static bool IsUtc(DataFrameColumn column) => !Has(column, DateTimeKind.Unspecified);

    public static string LocalFault(IEnumerable<string> names) =>
        string.Join(
            " ",
            names.Select(name =>
                $"column '{name}' has times of a computer's own zone (Kind Local); allowed: UTC. Load such a column as texts."
            )
        );

    private static bool Has(DataFrameColumn column, DateTimeKind kind) =>
        column is PrimitiveDataFrameColumn<DateTime> moments && moments.Any(moment => moment?.Kind == kind);
}
