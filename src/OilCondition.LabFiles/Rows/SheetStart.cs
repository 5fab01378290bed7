namespace OilCondition.LabFiles;

/// <summary>The beginning of a sheet: its first rows.</summary>
internal sealed class SheetStart : FileStart
{
    private const int FirstRows = 1000;

    private readonly string name;
    private readonly IEnumerator<TableRow> rows;
    private readonly List<TableRow> first = [];

    public SheetStart(TableSheet sheet)
    {
        name = sheet.Name;
        rows = sheet.Rows.GetEnumerator();
        while (first.Count < FirstRows && rows.MoveNext())
        {
            first.Add(rows.Current);
        }
    }

    public override string Sheet => name;

    public override IEnumerable<RowSource> Ways(ColumnMap map) => [new SheetRows(name, first.GetEnumerator())];

    public override RowSource Again(RowSource way) => new SheetRows(name, first.GetEnumerator());

    public override RowSource All(RowSource way) => new SheetRows(name, FromTheFirst().GetEnumerator());

    public override bool Grow() => false;

    private IEnumerable<TableRow> FromTheFirst()
    {
        foreach (var row in first)
        {
            yield return row;
        }

        using (rows)
        {
            while (rows.MoveNext())
            {
                yield return rows.Current;
            }
        }
    }
}
