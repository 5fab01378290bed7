namespace OilCondition.LabFiles;

/// <summary>What became of every cell below the header, so that nothing is lost: the five counts add up to all cells.</summary>
public sealed record CellCounts
{
    internal CellCounts(long keys, long readings, long blank, long rejected, long texts)
    {
        Keys = keys;
        Readings = readings;
        Blank = blank;
        Rejected = rejected;
        Texts = texts;
    }

    /// <summary>Machine, sample number, date, time and test temperature, taken over.</summary>
    public long Keys { get; }

    /// <summary>Cells with readings, taken over; a code after ISO 4406 is one cell with up to three readings.</summary>
    public long Readings { get; }

    /// <summary>Blank cells, dashes and words such as NA.</summary>
    public long Blank { get; }

    /// <summary>Cells that were not taken over: reported as problems, alone, with their row or with their column.</summary>
    public long Rejected { get; }

    /// <summary>Cells of other columns, kept as texts.</summary>
    public long Texts { get; }

    /// <summary>All cells below the header.</summary>
    public long All => Keys + Readings + Blank + Rejected + Texts;

    /// <summary>The five counts.</summary>
    /// <returns>For example <c>40 cells: 12 keys, 20 readings, 5 blank, 1 rejected, 2 texts</c>.</returns>
    public override string ToString() =>
        $"{All} cells: {Keys} keys, {Readings} readings, {Blank} blank, {Rejected} rejected, {Texts} texts";
}
