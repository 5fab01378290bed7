using System.Globalization;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Rows whose cells hold numbers and dates as such.</summary>
internal sealed class SheetRows(string sheet, IEnumerator<TableRow> rows) : RowSource
{
    private IReadOnlyList<object?> cells = [];

    public override string Sheet => sheet;

    public override bool LeavesOutBlankEnds => true;

    public override string Raw =>
        PlainText.Cut(string.Join(" | ", Enumerable.Range(0, Count).Select(i => Text(i).ToString())).AsSpan());

    public override bool Read()
    {
        if (!rows.MoveNext())
        {
            return false;
        }

        cells = rows.Current.Cells;
        Line = rows.Current.Number;
        Count = cells.Count;
        return true;
    }

    public override ReadOnlySpan<char> Text(int index) => Written(cells[index]).AsSpan();

    public override bool TryNumber(int index, out double value)
    {
        value = cells[index] switch
        {
            double number => number,
            decimal number => (double)number,
            int number => number,
            long number => number,
            float number => number,
            _ => double.NaN,
        };
        return Guard.IsFinite(value);
    }

    public override bool TryMoment(int index, out DateTime local)
    {
        local = cells[index] is DateTime moment ? moment : default;
        return cells[index] is DateTime;
    }

    private static string Written(object? cell) =>
        cell switch
        {
            null => "",
            string text => text,
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            DateTime moment => moment.ToString(
                moment.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss",
                CultureInfo.InvariantCulture
            ),
            DateTimeOffset moment => moment.ToString("yyyy-MM-dd HH:mm:sszzz", CultureInfo.InvariantCulture),
            TimeSpan time => time.ToString(@"hh\:mm\:ss", CultureInfo.InvariantCulture),
            _ => Convert.ToString(cell, CultureInfo.InvariantCulture) ?? "",
        };
}
