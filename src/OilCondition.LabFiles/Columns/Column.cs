namespace OilCondition.LabFiles;

/// <summary>A column of a file: what its header says, and how its cells fared.</summary>
internal sealed class Column(int index, string header, ColumnUse use)
{
    public int Index { get; } = index;

    /// <summary>The header as in the file.</summary>
    public string Header { get; } = header;

    public ColumnUse Use { get; private set; } = use;

    /// <summary>What a cell of it is; null where the row decides, or where it is none with readings.</summary>
    public LabColumn? Reading { get; private set; }

    /// <summary>Whether it is a viscosity, whose temperature may stand in a column of its own.</summary>
    public bool IsViscosity { get; init; }

    public string Unit { get; private set; } = "";

    /// <summary>Whether its numbers are in the measurand's own unit, whatever that is called.</summary>
    public bool IsOwnUnit { get; private set; }

    /// <summary>Whether it holds scale numbers after ISO 4406.</summary>
    public bool IsScale { get; private set; }

    public UnitOrigin UnitFrom { get; private set; }

    public string Method { get; private set; } = "";

    /// <summary>What is to be asked about it; empty for nothing.</summary>
    public string Doubt { get; set; } = "";

    /// <summary>Why none of its cells is taken over; empty where they are.</summary>
    public string Refusal { get; set; } = "";

    public int ReadCount { get; set; }

    public int BlankCount { get; set; }

    public int BoundedCount { get; set; }

    public int RefusedCount { get; set; }

    /// <summary>Under which name its texts stand at a sample: the header, and which one of several that are alike.</summary>
    public string TextName { get; set; } = header;

    public Column WithReading(LabColumn column, string unit, string method)
    {
        Reading = column;
        Method = column.Method.Length > 0 ? column.Method : method;
        return WithUnit(column, unit);
    }

    public Column WithUnit(LabColumn column, string unit)
    {
        Unit =
            unit.Length > 0 ? unit
            : column.Unit.Length > 0 ? column.Unit
            : column.Measurand.Unit;
        UnitFrom =
            unit.Length > 0 ? UnitOrigin.File
            : Unit.Length == 0 ? UnitOrigin.None
            : column.IsDefault || column.Unit.Length == 0 ? UnitOrigin.Assumed
            : UnitOrigin.Map;
        Convert(column.Measurand);
        return this;
    }

    /// <summary>The file says the unit in a row of its own.</summary>
    public void StateUnit(string unit)
    {
        (Unit, UnitFrom) = (unit, UnitOrigin.File);
        Convert(Reading!.Measurand);
    }

    private void Convert(Measurand measurand)
    {
        IsScale = CellReader.IsScale(Unit);
        IsOwnUnit =
            measurand.TryConvert(40, Unit, out var same)
            && same == 40
            && measurand.TryConvert(50, Unit, out same)
            && same == 50;
    }

    /// <summary>What cannot be read as readings is kept as texts.</summary>
    public void KeepAsText(string doubt)
    {
        Use = ColumnUse.Text;
        Doubt = doubt;
    }
}
