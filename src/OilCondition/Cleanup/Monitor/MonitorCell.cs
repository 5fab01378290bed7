namespace OilCondition.Cleanup;

/// <summary>What is kept of a stretch of time: the first reading of each kind, and what all of them say about holding.</summary>
internal sealed class MonitorCell
{
    public CleanupReading? Sensor { get; set; }

    public CleanupReading? Sample { get; set; }

    public CleanupReading? Particles { get; set; }

    public HoldMarks Figure { get; } = new();

    public HoldMarks Code { get; } = new();

    /// <summary>Takes in what another cell, which comes to lie in this one, has kept.</summary>
    public void Merge(MonitorCell other)
    {
        Sensor = First(Sensor, other.Sensor);
        Sample = First(Sample, other.Sample);
        Particles = First(Particles, other.Particles);
        Figure.Merge(other.Figure);
        Code.Merge(other.Code);
    }

    /// <summary>The earlier; at one moment the one with more water, then more particles, then the hotter: whatever the order in which they come.</summary>
    public static CleanupReading? First(CleanupReading? one, CleanupReading? other) =>
        one is null ? other
        : other is null ? one
        : Key(other).CompareTo(Key(one)) < 0 ? other
        : one;

    private static (DateTimeOffset, double, Qualifier, double, double, double, double) Key(CleanupReading one) =>
        (
            one.At,
            -(one.Figure?.Value ?? one.RelativeSaturation?.DecimalFractions ?? 0),
            one.Figure?.Qualifier ?? Qualifier.None,
            -(one.Particles?.At4PerMillilitre ?? 0),
            -(one.Particles?.At6PerMillilitre ?? 0),
            -(one.Particles?.At14PerMillilitre ?? 0),
            -(one.Temperature?.DegreesCelsius ?? -300)
        );
}
