namespace OilCondition.Sampling;

/// <summary>One reading of a series.</summary>
public sealed record SeriesPoint
{
    internal SeriesPoint(DateTimeOffset at, Reading reading, string sampleNumber)
    {
        At = at;
        Reading = reading;
        SampleNumber = sampleNumber;
    }

    /// <summary>When the sample was taken or the sensor read.</summary>
    public DateTimeOffset At { get; }

    /// <summary>The reading, in the unit of the series' measurand.</summary>
    public Reading Reading { get; }

    /// <summary>The laboratory's number; empty for a sensor reading.</summary>
    public string SampleNumber { get; }
}
