namespace OilCondition.LabFiles;

/// <summary>A column that the column map does not know, with what was in it.</summary>
public sealed class UnmappedColumn
{
    internal UnmappedColumn(string header, IReadOnlyDictionary<int, string> cells)
    {
        Header = header;
        Cells = cells;
    }

    /// <summary>Its header.</summary>
    public string Header { get; }

    /// <summary>What was in it, by line of the file.</summary>
    public IReadOnlyDictionary<int, string> Cells { get; }
}
