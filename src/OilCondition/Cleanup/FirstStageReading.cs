namespace OilCondition.Cleanup;

/// <summary>A reading that a cleanup curve does not use.</summary>
public sealed record FirstStageReading
{
    internal FirstStageReading(int position, DateTimeOffset at, FirstStageReason reason)
    {
        Position = position;
        At = at;
        Reason = reason;
    }

    /// <summary>Its place, from 0, in the lists that were given.</summary>
    public int Position { get; }

    /// <summary>When it was taken.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Why it is not used.</summary>
    public FirstStageReason Reason { get; }
}
