namespace OilCondition.LabFiles;

/// <summary>
/// The beginning of a file or sheet, which may be read several times: to find the delimiter and the header, and to ask whether the units can be
/// right. What follows is read once.
/// </summary>
internal abstract class FileStart
{
    /// <summary>Name of the sheet; empty for a file of one table.</summary>
    public virtual string Sheet => "";

    /// <summary>The ways in which it may be divided into rows, from its beginning on.</summary>
    public abstract IEnumerable<RowSource> Ways(ColumnMap map);

    /// <summary>The beginning once more, divided in the same way as these rows.</summary>
    public abstract RowSource Again(RowSource way);

    /// <summary>All rows from the beginning on, divided in the same way as these.</summary>
    public abstract RowSource All(RowSource way);

    /// <summary>Takes in more of the file, where the beginning did not reach to a header; false when there is no more.</summary>
    public abstract bool Grow();

    /// <summary>What is wrong with the text as a whole, where that is why it has no header; null for nothing.</summary>
    public virtual FormatException? EncodingFault(string file) => null;

    /// <summary>Whether a comma divides the cells, so that one inside a cell is no decimal comma that somebody forgot to state.</summary>
    public virtual bool CommasDivideCells(RowSource way) => true;
}
