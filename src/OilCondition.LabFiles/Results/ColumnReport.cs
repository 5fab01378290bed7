using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>What a column of a file was read as, who said in which unit it is, and how its cells fared.</summary>
public sealed class ColumnReport
{
    internal ColumnReport(Column column, string sheet)
    {
        Sheet = sheet;
        Header = PlainText.Cut(column.Header.AsSpan());
        Use = column.Use;
        Measurand = column.Reading?.Measurand;
        Unit = column.Unit;
        UnitFrom = column.UnitFrom;
        ReadCount = column.ReadCount;
        BlankCount = column.BlankCount;
        BoundedCount = column.BoundedCount;
        RefusedCount = column.RefusedCount;
        Doubt = column.Refusal.Length > 0 ? column.Refusal : column.Doubt;
    }

    /// <summary>The sheet of a workbook; empty for a file of one table.</summary>
    public string Sheet { get; }

    /// <summary>Its header as in the file; a long one is cut.</summary>
    public string Header { get; }

    /// <summary>What it was read as.</summary>
    public ColumnUse Use { get; }

    /// <summary>What it measures; null where it has no readings, and where each row or cell decides.</summary>
    public Measurand? Measurand { get; }

    /// <summary>The unit that its numbers were taken to be in; empty for none.</summary>
    public string Unit { get; }

    /// <summary>Who said so.</summary>
    public UnitOrigin UnitFrom { get; }

    /// <summary>Cells that were taken over, bounded ones included.</summary>
    public int ReadCount { get; }

    /// <summary>Cells without anything in them.</summary>
    public int BlankCount { get; }

    /// <summary>Readings that are bounds, such as <c>&lt;10</c>.</summary>
    public int BoundedCount { get; }

    /// <summary>Cells that were not taken over; the problems say why.</summary>
    public int RefusedCount { get; }

    /// <summary>What is to be asked about the column; empty for nothing.</summary>
    public string Doubt { get; }

    /// <summary>The column on one line.</summary>
    /// <returns>For example <c>WATER: water content in mg/kg (assumed); 12 read, 1 blank, 2 bounded, 0 refused</c>.</returns>
    public override string ToString() =>
        $"{Header}: {What}{InUnit}; {ReadCount} read, {BlankCount} blank, {BoundedCount} bounded, {RefusedCount} refused"
        + (Doubt.Length == 0 ? "" : $"; {Doubt}");

    /// <summary>What it was read as, in words.</summary>
    internal string What => Measurand?.Name ?? PlainText.Spaced(Use);

    private string InUnit => Unit.Length == 0 ? "" : $" in {Unit} ({PlainText.Spaced(UnitFrom)})";
}
