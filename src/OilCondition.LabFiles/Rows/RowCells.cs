using OilCondition.Cleanliness;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>The cells of a row that hold readings.</summary>
internal sealed class RowCells
{
    private readonly CellReader cells;
    private readonly HeaderIndex index;
    private readonly Column? testTemperature;
    private readonly Column[] counted;
    private readonly Column[] scales;
    private readonly Column[] codes;
    private readonly List<(Column Column, string Reason)> faults = [];
    private readonly RowReadings taken = new();

    public RowCells(Header header, CellReader cells, HeaderIndex index)
    {
        this.cells = cells;
        this.index = index;
        testTemperature = header.TestTemperature;
        var readings = header.Columns.Where(column => column.Use == ColumnUse.Reading).ToList();
        // Counts before scale numbers and codes, which say less of the same.
        counted = [.. readings.Where(column => !column.IsScale)];
        scales = [.. readings.Where(column => column.IsScale)];
        codes = [.. header.Columns.Where(column => column.Use == ColumnUse.CleanlinessCode)];
    }

    /// <summary>Cells taken over so far.</summary>
    public long Count { get; private set; }

    /// <summary>Blank cells so far, in rows that were taken over.</summary>
    public long BlankCount { get; private set; }

    /// <summary>Reads the cells of a row; returns what could not be taken over, in order of the kinds of columns.</summary>
    public List<(Column Column, string Reason)> Read(RowSource rows, ParsedRow row)
    {
        faults.Clear();
        taken.Clear();
        row.Readings = taken;
        foreach (var column in counted)
        {
            ReadCell(rows, column);
        }

        foreach (var column in scales)
        {
            ReadCell(rows, column);
        }

        foreach (var column in codes)
        {
            ReadCode(rows, column);
        }

        return faults;
    }

    private void ReadCell(RowSource rows, Column column)
    {
        var text = TextOf(rows, column);
        if (IsBlank(text, column))
        {
            return;
        }

        if (column.Refusal.Length > 0)
        {
            // Told once, with the column.
            Refuse(column, "");
            return;
        }

        if (ReadingColumn(rows, column, out var reason) is not { } known)
        {
            Refuse(column, reason);
            return;
        }

        var held = rows.TryNumber(column.Index, out var number) ? number : default(double?);
        if (!cells.TryRead(text, held, known, column, out var reading, out reason))
        {
            Refuse(column, reason);
        }
        else if (!taken.TryGetValue(known.Measurand, out var first))
        {
            taken.Add(known.Measurand, reading);
            Take(column, reading);
        }
        else if (IsSame(first, reading, column.IsScale))
        {
            Take(column, reading);
        }
        else
        {
            Refuse(column, $"another column of this row says {known.Measurand.Text(first)} already");
        }
    }

    private void ReadCode(RowSource rows, Column column)
    {
        var text = TextOf(rows, column);
        if (IsBlank(text, column))
        {
            return;
        }

        if (!CodeCell.TryRead(text, out var readings, out var reason))
        {
            Refuse(column, reason);
            return;
        }

        foreach (var (measurand, _, number) in readings)
        {
            if (
                number is { } scale
                && taken.TryGetValue(measurand, out var count)
                && !count.IsCensored
                && Iso4406.ScaleNumber(count.Value) != scale
            )
            {
                Refuse(
                    column,
                    $"another column of this row says {measurand.Text(count)}, which is scale number {Iso4406.ScaleNumber(count.Value)}"
                );
                return;
            }
        }

        foreach (var (measurand, reading, _) in readings.Where(one => !taken.ContainsKey(one.Measurand)))
        {
            taken.Add(measurand, reading);
        }

        Take(column, readings.Count > 0 ? readings[0].Reading : default);
    }

    /// <summary>What a column measures in this row: a viscosity by the test temperature beside it.</summary>
    private LabColumn? ReadingColumn(RowSource rows, Column column, out string reason)
    {
        reason = "";
        if (testTemperature is null || !column.IsViscosity)
        {
            return column.Reading;
        }

        var text = TextOf(rows, testTemperature);
        if (text.Length == 0 && column.Reading is not null)
        {
            return column.Reading;
        }

        if (text.Length == 0)
        {
            reason = "the test temperature beside it is missing";
            return null;
        }

        if (!rows.TryNumber(testTemperature.Index, out var degrees) && !cells.Numbers.TryRead(text, out degrees))
        {
            reason = $"the test temperature beside it is '{PlainText.Cut(text)}', which is no number";
            return null;
        }

        var header = HeaderText.Bare(testTemperature.Header);
        var isFahrenheit = header[header.Length - 1] == 'f';
        var celsius = isFahrenheit ? (degrees - 32) / 1.8 : degrees;
        var known = index.ViscosityAt(celsius);
        if (known is null || (column.Reading is { } stated && !stated.Measurand.Equals(known.Measurand)))
        {
            var expected = column.Reading?.Measurand.Name ?? "viscosity at 40 °C or at 100 °C";
            reason = $"measured at {celsius:0.#} °C, so it is no {expected}";
            return null;
        }

        return known;
    }

    private static bool IsSame(Reading one, Reading other, bool isScale) =>
        isScale
            ? one.IsCensored || Iso4406.ScaleNumber(one.Value) == Iso4406.ScaleNumber(other.Value)
            : one.Qualifier == other.Qualifier && Math.Abs(one.Value - other.Value) <= 1e-6 * Math.Abs(one.Value);

    private void Take(Column column, Reading reading)
    {
        Count++;
        column.ReadCount++;
        column.BoundedCount += reading.IsCensored ? 1 : 0;
    }

    private void Refuse(Column column, string reason) => faults.Add((column, reason));

    private bool IsBlank(ReadOnlySpan<char> text, Column column)
    {
        if (!cells.IsBlank(text))
        {
            return false;
        }

        BlankCount++;
        column.BlankCount++;
        return true;
    }

    private static ReadOnlySpan<char> TextOf(RowSource rows, Column column) =>
        column.Index >= rows.Count ? default : rows.Text(column.Index).Trim();
}
