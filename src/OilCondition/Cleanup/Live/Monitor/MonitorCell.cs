namespace OilCondition.Cleanup;

/// <summary>What is kept of a stretch of time: the first reading of each kind, and what all of them say about holding.</summary>
internal sealed class MonitorCell
{
    public CleanupReading? Sensor { get; set; }

    public CleanupReading? Titration { get; set; }

    public CleanupReading? Particles { get; set; }

    public HoldMarks Water { get; } = new();

    public HoldMarks Code { get; } = new();

    /// <summary>Takes in what another cell, which comes to lie in this one, has kept.</summary>
    public void Merge(MonitorCell other)
    {
        Sensor = First(Sensor, other.Sensor);
        Titration = First(Titration, other.Titration);
        Particles = First(Particles, other.Particles);
        Water.Merge(other.Water);
        Code.Merge(other.Code);
    }

    /// <summary>The earlier; at one moment the one with more water, then more particles, then the hotter: whatever the order in which they come.</summary>
    public static CleanupReading? First(CleanupReading? one, CleanupReading? other) =>
        one is null ? other
        : other is null ? one
        : Key(other).CompareTo(Key(one)) < 0 ? other
        : one;

    private static (DateTimeOffset, double, double, double, double, double) Key(CleanupReading one) =>
        (
            one.At,
            -one.WaterFigure,
            -one.Particles.At4PerMillilitre,
            -one.Particles.At6PerMillilitre,
            -one.Particles.At14PerMillilitre,
            -one.Temperature.DegreesCelsius
        );
}
