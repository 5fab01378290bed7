using OilCondition.Guards;
using OilCondition.Statistics;

namespace OilCondition.Purification;

/// <summary>What is known about a cleanup before its curve is fitted.</summary>
/// <example>
/// <code>
/// // the heater was up to temperature at 14:00, and the vacuum stage cannot go below 20 mg/kg
/// var options = new CleanupOptions(startedAt: twoOClock, floor: 20);
/// var curve = CleanupCurve.Fit(moments, ppm, options);
/// </code>
/// </example>
public sealed class CleanupOptions
{
    /// <summary>States what is known. Everything has a default; name the arguments that differ.</summary>
    /// <param name="noise">How the scatter goes with the size of a reading; logarithmic for particle counts.</param>
    /// <param name="startedAt">
    /// When the exponential fall began, for example when the oil was warm and the free water gone. Earlier readings are not used. Null if
    /// it began at the first reading.
    /// </param>
    /// <param name="start">Known value at that moment, 0 or more, in the unit of the readings; null if it is to be fitted.</param>
    /// <param name="floor">Known floor, 0 or more, in the unit of the readings; null if it is to be fitted.</param>
    /// <param name="ratePerHour">Known rate, above 0, in 1/h; null if it is to be fitted.</param>
    /// <param name="robust">Whether single outliers are to be weighed down. They are flagged, never removed.</param>
    /// <exception cref="ArgumentException">Start, floor and rate are all known.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or outside its range.</exception>
    public CleanupOptions(
        DecayNoise noise = DecayNoise.Constant,
        DateTimeOffset? startedAt = null,
        double? start = null,
        double? floor = null,
        double? ratePerHour = null,
        bool robust = false
    )
    {
        if (start.HasValue)
        {
            Guard.NotNegative(start.Value, "", nameof(start));
        }

        if (ratePerHour.HasValue)
        {
            Guard.Positive(ratePerHour.Value, "1/h", nameof(ratePerHour));
        }

        StartedAt = startedAt;
        // Hours count from the moment given, so that a known start holds at zero.
        Decay = new ExponentialDecayOptions(
            noise,
            start: start,
            startTime: start.HasValue ? 0 : null,
            floor: floor,
            rate: ratePerHour,
            robust: robust
        );
    }

    /// <summary>Constant scatter, nothing known.</summary>
    public static CleanupOptions Default { get; } = new();

    /// <summary>How the scatter goes with the size of a reading.</summary>
    public DecayNoise Noise => Decay.Noise;

    /// <summary>When the exponential fall began; null for the first reading.</summary>
    public DateTimeOffset? StartedAt { get; }

    /// <summary>Known start, if any.</summary>
    public double? Start => Decay.Start;

    /// <summary>Known floor, if any.</summary>
    public double? Floor => Decay.Floor;

    /// <summary>Known rate, if any.</summary>
    public double? RatePerHour => Decay.Rate;

    /// <summary>Whether single outliers are weighed down.</summary>
    public bool Robust => Decay.Robust;

    /// <summary>The same in the terms of the fit, with hours for time.</summary>
    internal ExponentialDecayOptions Decay { get; }

    /// <summary>Readings needed: one more than there are parts to fit.</summary>
    internal int FewestReadings => Decay.FreeParts + 1;
}
