namespace OilCondition;

/// <summary>A reading that is kept out of a series, and why. It stays visible beside the series.</summary>
public sealed record LeftOutPoint
{
    internal LeftOutPoint(SeriesPoint point, LeftOutReason reason)
    {
        Point = point;
        Reason = reason;
    }

    /// <summary>The reading.</summary>
    public SeriesPoint Point { get; }

    /// <summary>Why it is kept out.</summary>
    public LeftOutReason Reason { get; }
}
