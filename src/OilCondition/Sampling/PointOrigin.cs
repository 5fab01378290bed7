namespace OilCondition;

/// <summary>Where readings come from: what all readings of one sample share.</summary>
/// <param name="At">When the sample was taken or the sensor read.</param>
/// <param name="SampleNumber">The laboratory's number; empty for a sensor reading.</param>
/// <param name="OilHours">Running hours of the oil at that moment; null where they are not recorded.</param>
internal sealed record PointOrigin(DateTimeOffset At, string SampleNumber = "", double? OilHours = null);
