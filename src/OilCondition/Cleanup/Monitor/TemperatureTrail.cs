namespace OilCondition.Cleanup;

/// <summary>What is kept of all readings of a run together: the latest moment, the temperatures, and when the oil was first warm.</summary>
internal sealed class TemperatureTrail
{
    public bool HasReadings { get; private set; }

    public DateTimeOffset Latest { get; private set; }

    /// <summary>When the latest temperature was read; null where there is none.</summary>
    public DateTimeOffset? TemperatureAt { get; private set; }

    public double? LatestCelsius { get; private set; }

    public double? LowestCelsius { get; private set; }

    public double? HighestCelsius { get; private set; }

    /// <summary>First reading in warm oil; null for never, and where readings are referred to a temperature.</summary>
    public DateTimeOffset? WarmAt { get; private set; }

    public bool IsWarm(CleanupMonitorOptions options) =>
        options.IsReferred || (TemperatureAt.HasValue && LatestCelsius >= options.ReferenceTemperature.DegreesCelsius);

    public void Take(CleanupReading reading, CleanupMonitorOptions options)
    {
        Latest = HasReadings && Latest > reading.At ? Latest : reading.At;
        HasReadings = true;
        if (reading.Temperature?.DegreesCelsius is not { } celsius)
        {
            return;
        }

        LowestCelsius = Math.Min(LowestCelsius ?? celsius, celsius);
        HighestCelsius = Math.Max(HighestCelsius ?? celsius, celsius);
        if (
            TemperatureAt is null
            || reading.At > TemperatureAt
            || (reading.At == TemperatureAt && celsius > LatestCelsius)
        )
        {
            TemperatureAt = reading.At;
            LatestCelsius = celsius;
        }

        var isWarm = !options.IsReferred && celsius >= options.ReferenceTemperature.DegreesCelsius;
        WarmAt = isWarm && (WarmAt is null || reading.At < WarmAt) ? reading.At : WarmAt;
    }
}
