using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Takes over one table, row by row and cell by cell, and accounts for every cell.</summary>
internal sealed class RowReader
{
    private readonly string file;
    private readonly ColumnMap map;
    private readonly Header header;
    private readonly RowSource rows;
    private readonly CellReader cells;
    private readonly MomentReader moments;
    private readonly RowCells readings;
    private string machine = "";
    private long blank;

    public RowReader(string file, ColumnMap map, Header header, RowSource rows, NumberText numbers)
    {
        this.file = file;
        this.map = map;
        this.header = header;
        this.rows = rows;
        cells = new CellReader(numbers, map.Blank);
        moments = new MomentReader(map);
        readings = new RowCells(header, cells, map.Index);
    }

    public long Keys { get; private set; }

    public long ReadingCells => readings.Count;

    public long Blank => blank + readings.BlankCount;

    public long Rejected { get; private set; }

    public long Texts { get; private set; }

    /// <summary>The next row that is not blank; null at the end.</summary>
    public ParsedRow? Next()
    {
        while (rows.Read())
        {
            if (rows.Line <= header.LastLine)
            {
                continue;
            }

            if (rows.IsBlank)
            {
                blank += rows.Count > 1 ? rows.Count : 0;
                continue;
            }

            var row = new ParsedRow(rows.Sheet, rows.Line);
            Take(row);
            return row;
        }

        return null;
    }

    private void Take(ParsedRow row)
    {
        if (rows.Fault.Length > 0)
        {
            RefuseRow(row, null, rows.Fault);
        }
        else if (!HasAllCells())
        {
            RefuseRow(row, null, $"the row has {rows.Count} fields, the header has {header.Columns.Count}");
        }
        else if (KeysOf(row) is { } fault)
        {
            RefuseRow(row, fault.Column, fault.Reason);
        }
        else
        {
            row.IsTaken = true;
            Count();
            foreach (var (column, reason) in readings.Read(rows, row))
            {
                Rejected++;
                column.RefusedCount++;
                if (reason.Length > 0)
                {
                    row.Refuse(Problem(column, Cited(column), reason));
                }
            }

            TakeTexts(row);
        }
    }

    /// <summary>As many cells as the header has; blank ones behind them do no harm.</summary>
    private bool HasAllCells()
    {
        var count = header.Columns.Count;
        for (var i = count; i < rows.Count; i++)
        {
            if (!rows.Text(i).IsWhiteSpace())
            {
                return false;
            }
        }

        return rows.Count >= count || rows.LeavesOutBlankEnds;
    }

    private ReadOnlySpan<char> Text(Column? column) =>
        column is null || column.Index >= rows.Count ? default : rows.Text(column.Index).Trim();

    private (Column? Column, string Reason)? KeysOf(ParsedRow row)
    {
        row.MachineId = header.Machine is null ? map.ConstantMachine : MachineOf(Text(header.Machine));
        row.SampleNumber = header.SampleNumber is null
            ? map.ConstantSampleNumber
            : Text(header.SampleNumber).ToString();
        if (header.Machine is not null && row.MachineId.Length == 0)
        {
            return (null, "the machine is missing");
        }

        if (HasNoText(row.MachineId))
        {
            return (
                header.Machine,
                "a machine id must not contain control characters or damaged ones; check the file's encoding"
            );
        }

        if (HasNoText(row.SampleNumber))
        {
            return (
                header.SampleNumber,
                "a sample number must not contain control characters or damaged ones; check the file's encoding"
            );
        }

        return Moment(row, out var remark) ? Remark(row, remark) : (header.TakenAt, remark);
    }

    private bool Moment(ParsedRow row, out string remark)
    {
        var time = Text(header.TimeOfDay).ToString();
        DateTimeOffset at;
        var isRead =
            header.TakenAt is { } column && column.Index < rows.Count && rows.TryMoment(column.Index, out var local)
                ? moments.TryRead(local, time, row.MachineId, out at, out remark)
                : moments.TryRead(
                    header.TakenAt is null ? map.ConstantTakenAt.AsSpan() : Text(header.TakenAt),
                    time,
                    row.MachineId,
                    out at,
                    out remark
                );
        row.At = at;
        return isRead;
    }

    private (Column? Column, string Reason)? Remark(ParsedRow row, string remark)
    {
        if (remark.Length > 0)
        {
            row.Doubt(Problem(header.TakenAt, Cited(header.TakenAt), remark));
        }

        return null;
    }

    private string MachineOf(ReadOnlySpan<char> text)
    {
        // Rows of one machine mostly follow one another.
        if (!text.SequenceEqual(machine.AsSpan()))
        {
            machine = text.ToString();
        }

        return machine;
    }

    private void Count()
    {
        foreach (var key in header.Keys)
        {
            if (Text(key).Length == 0)
            {
                blank++;
                key.BlankCount++;
            }
            else
            {
                Keys++;
                key.ReadCount++;
            }
        }

        blank += Math.Max(0, rows.Count - header.Columns.Count);
    }

    private void TakeTexts(ParsedRow row)
    {
        foreach (var column in header.Texts)
        {
            var text = column.Index < rows.Count ? rows.Text(column.Index) : default;
            if (text.IsWhiteSpace())
            {
                blank++;
                column.BlankCount++;
            }
            else if (text.IndexOfAny('\0', '\uFFFD') >= 0)
            {
                Rejected++;
                column.RefusedCount++;
                row.Refuse(
                    Problem(
                        column,
                        Cited(column),
                        "it has characters that are no text in the file's encoding; state the encoding in the column map"
                    )
                );
            }
            else
            {
                Texts++;
                column.ReadCount++;
                (row.Texts ??= new Dictionary<string, string>(StringComparer.Ordinal))[column.TextName] =
                    text.ToString();
            }
        }
    }

    private static bool HasNoText(string text)
    {
        foreach (var letter in text)
        {
            if (letter == '\uFFFD' || char.IsControl(letter))
            {
                return true;
            }
        }

        return false;
    }

    private void RefuseRow(ParsedRow row, Column? column, string reason)
    {
        Rejected += rows.Count;
        foreach (var one in header.Columns.Take(rows.Count))
        {
            one.RefusedCount++;
        }

        row.Refuse(Problem(column, rows.Raw, reason));
    }

    private string Cited(Column? column) => PlainText.Cut(Text(column));

    private FileProblem Problem(Column? column, string text, string reason) =>
        new(file, rows.Sheet, rows.Line, (column?.Index ?? -1) + 1, column?.Header ?? "", text, reason);
}
