using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Cleanup;

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
    /// <summary>Contents and counts go up to here: above every count in the table of ISO 4406 and above 100 % water in mg/kg.</summary>
    internal const double LargestContent = 1e12;

    private const double FastestPerHour = 1e6;

    /// <summary>States what is known. Everything has a default; name the arguments that differ.</summary>
    /// <param name="noise">How the scatter goes with the size of a reading: two components, told from the readings; logarithmic for particle counts.</param>
    /// <param name="startedAt">
    /// When the exponential fall began, for example when the oil was warm and the free water gone. Earlier readings are not used. Null if
    /// that is not known.
    /// </param>
    /// <param name="start">Known value at that moment, 0 to 10¹², in the unit of the readings; null if it is to be fitted.</param>
    /// <param name="floor">Known floor, 0 to 10¹², in the unit of the readings; null if it is to be fitted.</param>
    /// <param name="ratePerHour">Known rate, above 0 to 10⁶, in 1/h; null if it is to be fitted.</param>
    /// <param name="robust">Whether outliers are to be left out of the fit. They stay flagged.</param>
    /// <param name="freeWaterAbove">
    /// Content above which water is free at the temperature of the run, above 0 to 10¹², in the unit of the readings, as the oil's
    /// saturation curve gives it. Readings up to the last one above it are not used. Null if that is not known.
    /// </param>
    /// <param name="detectSlowStart">
    /// Whether a slow start is looked for in the shape of the readings and left out, where neither a stated start nor a reading at saturation
    /// marks the end of an initial phase.
    /// </param>
    /// <exception cref="ArgumentException">Start, floor and rate are all known.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or outside its range.</exception>
    public CleanupOptions(
        DecayNoise noise = DecayNoise.TwoComponent,
        DateTimeOffset? startedAt = null,
        double? start = null,
        double? floor = null,
        double? ratePerHour = null,
        bool robust = false,
        double? freeWaterAbove = null,
        bool detectSlowStart = true
    )
    {
        if (start.HasValue)
        {
            Guard.InRange(start.Value, 0, LargestContent, "", nameof(start));
        }

        if (floor.HasValue)
        {
            Guard.InRange(floor.Value, 0, LargestContent, "", nameof(floor));
        }

        if (ratePerHour.HasValue)
        {
            Guard.InRange(ratePerHour.Value, 1e-12, FastestPerHour, "1/h", nameof(ratePerHour));
        }

        if (freeWaterAbove.HasValue)
        {
            Guard.InRange(freeWaterAbove.Value, 1e-12, LargestContent, "", nameof(freeWaterAbove));
        }

        StartedAt = startedAt;
        FreeWaterAbove = freeWaterAbove;
        DetectsSlowStart = detectSlowStart;

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

    /// <summary>Scatter of two components, nothing known, a slow start is looked for.</summary>
    public static CleanupOptions Default { get; } = new();

    /// <summary>For particle counts: scatter in proportion to the count, fitted on the logarithm; a count of 0 cannot be.</summary>
    public static CleanupOptions ForCounts { get; } = new(DecayNoise.Logarithmic);

    /// <summary>How the scatter goes with the size of a reading.</summary>
    public DecayNoise Noise => Decay.Noise;

    /// <summary>When the exponential fall began, if stated.</summary>
    public DateTimeOffset? StartedAt { get; }

    /// <summary>Known start, if any.</summary>
    public double? Start => Decay.Start;

    /// <summary>Known floor, if any.</summary>
    public double? Floor => Decay.Floor;

    /// <summary>Known rate, if any.</summary>
    public double? RatePerHour => Decay.Rate;

    /// <summary>Whether outliers are left out of the fit.</summary>
    public bool Robust => Decay.Robust;

    /// <summary>Content above which water is free, if stated.</summary>
    public double? FreeWaterAbove { get; }

    /// <summary>Whether a slow start is looked for in the shape of the readings.</summary>
    public bool DetectsSlowStart { get; }

    /// <summary>The same in the terms of the fit, with hours for time.</summary>
    internal ExponentialDecayOptions Decay { get; }

    /// <summary>Readings needed: one more than there are parts to fit.</summary>
    internal int FewestReadings => Decay.FreeParts + 1;

    /// <summary>
    /// The usual scatter of a measurand: of the logarithm where ratios count, in proportion where one of its readings is 0 or lies below a
    /// limit; of two components for the others.
    /// </summary>
    internal static CleanupOptions UsualFor(NaturalScale scale, IReadOnlyList<Reading> readings) =>
        scale == NaturalScale.Linear ? Default
        : readings.All(reading => reading.Value > 0 && reading.Qualifier != Qualifier.LessThan) ? ForCounts
        : new CleanupOptions(DecayNoise.Proportional);

    /// <summary>These options with another noise.</summary>
    internal CleanupOptions With(DecayNoise noise) =>
        new(noise, StartedAt, Start, Floor, RatePerHour, Robust, FreeWaterAbove, DetectsSlowStart);

    /// <summary>The scatter and what is known.</summary>
    /// <returns>For example <c>two component scatter, floor 20</c>.</returns>
    public override string ToString()
    {
        List<string> known = [$"{PlainText.Spaced(Noise)} scatter"];
        void Add(string name, double? value)
        {
            if (value is { } number)
            {
                known.Add($"{name} {PlainText.Number(number)}");
            }
        }

        if (StartedAt is { } at)
        {
            known.Add($"from {PlainText.Time(at)}");
        }

        Add("start", Start);
        Add("floor", Floor);
        Add("rate per hour", RatePerHour);
        Add("free water above", FreeWaterAbove);
        return string.Join(", ", known) + (Robust ? ", robust" : "");
    }
}
