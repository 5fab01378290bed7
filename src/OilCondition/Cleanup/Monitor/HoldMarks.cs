namespace OilCondition.Cleanup;

/// <summary>What the readings of a cell say about one part of the target.</summary>
internal sealed class HoldMarks
{
    /// <summary>First reading above the target.</summary>
    public DateTimeOffset? Above { get; private set; }

    /// <summary>Whether a reading does not count because the oil is cold.</summary>
    public bool IsCold { get; private set; }

    /// <summary>First reading at the target or below.</summary>
    public DateTimeOffset? FirstBelow { get; private set; }

    /// <summary>Last reading at the target or below.</summary>
    public DateTimeOffset? LastBelow { get; private set; }

    public void MarkAbove(DateTimeOffset at) => Above = Earlier(Above, at);

    public void MarkCold() => IsCold = true;

    public void MarkBelow(DateTimeOffset at)
    {
        FirstBelow = Earlier(FirstBelow, at);
        LastBelow = LastBelow > at ? LastBelow : at;
    }

    public void Merge(HoldMarks other)
    {
        Above = Earlier(Above, other.Above);
        IsCold |= other.IsCold;
        FirstBelow = Earlier(FirstBelow, other.FirstBelow);
        LastBelow = other.LastBelow is null || LastBelow > other.LastBelow ? LastBelow : other.LastBelow;
    }

    private static DateTimeOffset? Earlier(DateTimeOffset? one, DateTimeOffset? other) =>
        one is null || other < one ? other ?? one : one;
}
