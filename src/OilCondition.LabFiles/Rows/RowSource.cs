namespace OilCondition.LabFiles;

/// <summary>The rows of a file or sheet, one after the other. What a row gives lasts until the next one is read.</summary>
internal abstract class RowSource
{
    /// <summary>Line of a file or row of a sheet where the row begins, counted from 1.</summary>
    public int Line { get; protected set; }

    /// <summary>How many cells it has.</summary>
    public int Count { get; protected set; }

    /// <summary>Why the row cannot be divided into cells; empty where it can.</summary>
    public string Fault { get; protected set; } = "";

    /// <summary>Name of the sheet; empty for a file of one table.</summary>
    public virtual string Sheet => "";

    /// <summary>How much of the whole lies behind; null where nobody knows how much there is.</summary>
    public virtual double? FractionRead => null;

    /// <summary>Whether cells behind the last one of a row are only left out, as spreadsheets do.</summary>
    public virtual bool LeavesOutBlankEnds => false;

    /// <summary>Goes to the next row.</summary>
    public abstract bool Read();

    /// <summary>A cell as text.</summary>
    public abstract ReadOnlySpan<char> Text(int index);

    /// <summary>A cell that holds a number as such.</summary>
    public virtual bool TryNumber(int index, out double value)
    {
        value = 0;
        return false;
    }

    /// <summary>A cell that holds a date as such.</summary>
    public virtual bool TryMoment(int index, out DateTime local)
    {
        local = default;
        return false;
    }

    /// <summary>The whole row as text, cut where it is long.</summary>
    public abstract string Raw { get; }

    /// <summary>Whether nothing stands in it.</summary>
    public bool IsBlank
    {
        get
        {
            for (var i = 0; i < Count; i++)
            {
                if (!Text(i).IsWhiteSpace())
                {
                    return false;
                }
            }

            return Fault.Length == 0;
        }
    }

    public string[] Texts()
    {
        var texts = new string[Count];
        for (var i = 0; i < Count; i++)
        {
            texts[i] = Text(i).Trim().ToString();
        }

        return texts;
    }
}
