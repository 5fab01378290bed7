using System.Globalization;

namespace OilCondition.LabFiles;

/// <summary>What the first rows below a header tell of all of them: a row of units, how numbers are written, and whether units can be right.</summary>
internal sealed class FirstRows
{
    private const int MostSuggestions = 100;

    private readonly Header header;
    private readonly ColumnMap map;
    private readonly List<(Column Column, List<double> Values)> numbers;
    private bool needsOtherSeparator;

    private FirstRows(Header header, ColumnMap map)
    {
        this.header = header;
        this.map = map;
        numbers =
        [
            .. header
                .Columns.Where(column => column.Use == ColumnUse.Reading && column.Reading is not null)
                .Select(column => (column, new List<double>())),
        ];
    }

    /// <summary>Looks at the first rows and settles the columns; says how numbers are to be read.</summary>
    public static NumberText Settle(Header header, RowSource rows, ColumnMap map, bool commasDivideCells)
    {
        var first = new FirstRows(header, map);
        first.Read(rows);
        foreach (var (column, values) in first.numbers)
        {
            Question(column, values);
        }

        first.QuestionLargeParticles();
        first.SuggestNames();
        var isStated = map.DecimalSeparator is not null || commasDivideCells;
        return new NumberText(first.Separator, isStated && !first.needsOtherSeparator);
    }

    private char Separator => map.DecimalSeparator ?? '.';

    private void Read(RowSource rows)
    {
        var read = new NumberText(Separator, mayGroup: true);
        var isFirst = true;
        while (rows.Read())
        {
            if (rows.Line < header.Line && !rows.IsBlank)
            {
                header.Titles.Add(rows.Raw);
            }

            if (rows.Line <= header.Line || rows.IsBlank)
            {
                continue;
            }

            if (isFirst && IsUnits(rows))
            {
                header.LastLine = rows.Line;
            }

            isFirst = false;
            foreach (var (column, values) in numbers.Where(one => one.Column.Index < rows.Count))
            {
                if (
                    rows.TryNumber(column.Index, out var value)
                    || TryBound(rows.Text(column.Index).Trim(), read, out value)
                )
                {
                    values.Add(value);
                }
            }
        }
    }

    private bool TryBound(ReadOnlySpan<char> text, NumberText read, out double value)
    {
        if (text.Length > 0 && text[0] is '<' or '>' or '~' or '≤' or '≥')
        {
            text = text.Slice(1).TrimStart(" =".AsSpan());
        }

        needsOtherSeparator |= text.Length is > 0 and < 30 && read.NeedsOther(text);
        return read.TryRead(text, out value);
    }

    /// <summary>A row without keys, in which each column of readings that has anything has a unit that it may have.</summary>
    private bool IsUnits(RowSource rows)
    {
        var count = rows.Count;
        var keys = new[] { header.TakenAt, header.Machine, header.SampleNumber };
        if (keys.Any(key => key is not null && key.Index < count && !rows.Text(key.Index).IsWhiteSpace()))
        {
            return false;
        }

        var stated = new List<(Column Column, string Unit)>();
        foreach (var (column, _) in numbers.Where(one => one.Column.Index < count))
        {
            var unit = rows.Text(column.Index).Trim().Trim("[]()".AsSpan()).ToString();
            if (unit.Length > 0 && !(unit.Length < 20 && column.Reading!.Takes(unit)))
            {
                return false;
            }

            if (unit.Length > 0)
            {
                stated.Add((column, unit));
            }
        }

        stated.ForEach(one => one.Column.StateUnit(one.Unit));
        return stated.Count > 0;
    }

    private static void Question(Column column, List<double> values)
    {
        var measurand = column.Reading!.Measurand;
        if (UnitDoubt.Better(measurand, column.Unit, values) is { } better)
        {
            Question(column, better, values);
        }
        else if (column.UnitFrom == UnitOrigin.Assumed && UnitDoubt.HasOtherUnits(measurand))
        {
            column.Doubt = $"the unit {column.Unit} is assumed; neither the file nor the column map states it";
        }
    }

    private static void Question(Column column, string better, List<double> values)
    {
        var told = values.Where(value => value != 0).ToList();
        var range = told.Count == 1 ? Plain(told[0]) : $"{Plain(told.Min())} to {Plain(told.Max())}";
        var fits = $"the values ({range}) fit {better} better than {column.Unit}";
        if (column.UnitFrom == UnitOrigin.Assumed)
        {
            column.Refusal = $"nobody states the unit, and {fits}; state it in the header or in the column map";
        }
        else
        {
            column.Doubt =
                $"{fits}, which {(column.UnitFrom == UnitOrigin.File ? "the file" : "the column map")} states";
        }
    }

    /// <summary>Beside scale numbers of the smaller sizes, whole numbers up to 28 at 14 µm(c) are scale numbers too.</summary>
    private void QuestionLargeParticles()
    {
        var isScale = numbers.Exists(one =>
            one.Column.Refusal.Length > 0 && Measurands.Particles4.Equals(one.Column.Reading!.Measurand)
            || one.Column.Refusal.Length > 0 && Measurands.Particles6.Equals(one.Column.Reading!.Measurand)
        );
        foreach (
            var (column, values) in numbers.Where(one => Measurands.Particles14.Equals(one.Column.Reading!.Measurand))
        )
        {
            if (isScale && values.Count > 0 && values.TrueForAll(value => value <= 28 && value == Math.Floor(value)))
            {
                Question(column, "ISO 4406", values);
            }
        }
    }

    private void SuggestNames()
    {
        foreach (
            var column in header
                .Columns.Where(one => one.Use == ColumnUse.Text && one.Doubt.Length == 0)
                .Take(MostSuggestions)
        )
        {
            if (map.Catalog.Nearest(column.Header) is { } near)
            {
                column.Doubt = $"kept as text; did you mean '{near}'?";
            }
        }
    }

    private static string Plain(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
