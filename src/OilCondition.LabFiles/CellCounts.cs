namespace OilCondition.LabFiles;

/// <summary>What became of every cell below the header, so that nothing is lost: the five counts add up to all cells.</summary>
public sealed record CellCounts
{
    internal CellCounts(int keys, int readings, int blank, int rejected, int unmapped)
    {
        Keys = keys;
        Readings = readings;
        Blank = blank;
        Rejected = rejected;
        Unmapped = unmapped;
    }

    /// <summary>Machine, sample number and date, taken over.</summary>
    public int Keys { get; }

    /// <summary>Readings taken over.</summary>
    public int Readings { get; }

    /// <summary>Blank cells and dashes.</summary>
    public int Blank { get; }

    /// <summary>Cells reported as problems, alone or with their row.</summary>
    public int Rejected { get; }

    /// <summary>Cells of columns that nobody mapped.</summary>
    public int Unmapped { get; }

    /// <summary>All cells below the header.</summary>
    public int All => Keys + Readings + Blank + Rejected + Unmapped;
}
