using System.Globalization;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Column reports as a table for the eye.</summary>
internal static class ColumnTable
{
    /// <summary>A table of a thousand columns is none.</summary>
    private const int MostRows = 100;

    public static string Of(IReadOnlyList<ColumnReport> columns)
    {
        string[] header = ["column", "read as", "unit", "said by", "read", "blank", "bounded", "refused"];
        var rows = columns.Take(MostRows).Select(Cells).Prepend(header).ToList();
        var widths = header.Select((_, i) => rows.Max(row => row[i].Length)).ToList();
        var lines = rows.Select(row =>
                string.Join("  ", row.Select((cell, i) => i < 4 ? cell.PadRight(widths[i]) : cell.PadLeft(widths[i])))
                    .TrimEnd()
            )
            .ToList();
        lines.AddRange(
            columns
                .Take(MostRows)
                .Where(column => column.Doubt.Length > 0)
                .Select(column => $"{column.Header}: {column.Doubt}")
        );
        if (columns.Count > MostRows)
        {
            lines.Add($"and {Whole(columns.Count - MostRows)} columns more");
        }

        return string.Join(Environment.NewLine, lines);
    }

    private static string[] Cells(ColumnReport column) =>
        [
            Short(column.Sheet.Length == 0 ? column.Header : $"{column.Sheet}!{column.Header}"),
            column.What,
            column.Unit,
            column.UnitFrom == UnitOrigin.None ? "" : PlainText.Spaced(column.UnitFrom),
            Whole(column.ReadCount),
            Whole(column.BlankCount),
            Whole(column.BoundedCount),
            Whole(column.RefusedCount),
        ];

    private static string Short(string text) => text.Length <= 40 ? text : $"{text.Substring(0, 39)}…";

    private static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);
}
