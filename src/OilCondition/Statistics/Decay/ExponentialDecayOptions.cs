using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>What is known before a decay is fitted: how readings scatter, which parts of the curve are fixed, whether outliers are expected.</summary>
public sealed class ExponentialDecayOptions
{
    /// <summary>States what is known. Everything has a default; name the arguments that differ.</summary>
    /// <param name="noise">How the scatter goes with the size of a reading.</param>
    /// <param name="lowestFloor">Lowest floor allowed: 0 by default, since contents and counts are never negative; null for no bound.</param>
    /// <param name="start">Known value at <paramref name="startTime"/>; null if it is to be fitted.</param>
    /// <param name="startTime">When the known start held; null for the time of the first reading. No reading may be earlier.</param>
    /// <param name="floor">Known floor, for example the lowest content that physics allows; null if it is to be fitted.</param>
    /// <param name="rate">Known rate per unit of time, above 0; null if it is to be fitted.</param>
    /// <param name="robust">Whether single outliers are to be left out of the fit (<see cref="ExponentialDecayAnalysis.FlaggedReadings"/>).</param>
    /// <exception cref="ArgumentException">All three parts are known, or a start time is given without a start.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, the rate not above 0, or the floor below the lowest floor.</exception>
    public ExponentialDecayOptions(
        DecayNoise noise = DecayNoise.Constant,
        double? lowestFloor = 0,
        double? start = null,
        double? startTime = null,
        double? floor = null,
        double? rate = null,
        bool robust = false
    )
    {
        CheckFinite(lowestFloor, nameof(lowestFloor));
        CheckFinite(start, nameof(start));
        CheckFinite(startTime, nameof(startTime));
        CheckFinite(floor, nameof(floor));
        if (rate.HasValue)
        {
            Guard.Positive(rate.Value, "", nameof(rate));
        }

        if (startTime.HasValue && !start.HasValue)
        {
            throw new ArgumentException("A start time needs the value that the curve had then.", nameof(startTime));
        }

        if (start.HasValue && floor.HasValue && rate.HasValue)
        {
            throw new ArgumentException("Start, floor and rate are all known; nothing is left to fit.", nameof(rate));
        }

        if (lowestFloor.HasValue && floor < lowestFloor)
        {
            throw new ArgumentOutOfRangeException(
                nameof(floor),
                $"floor is {floor.Value:G7}; allowed: {lowestFloor.Value:G7} (lowestFloor) or more."
            );
        }

        Noise = noise;
        LowestFloor = lowestFloor;
        Start = start;
        StartTime = startTime;
        Floor = floor;
        Rate = rate;
        Robust = robust;
    }

    /// <summary>Constant scatter, nothing known, floor of 0 or more, no outliers expected.</summary>
    public static ExponentialDecayOptions Default { get; } = new();

    /// <summary>How the scatter goes with the size of a reading.</summary>
    public DecayNoise Noise { get; }

    /// <summary>Lowest floor allowed, if there is one.</summary>
    public double? LowestFloor { get; }

    /// <summary>Known start, if any.</summary>
    public double? Start { get; }

    /// <summary>When the known start held; null for the first reading.</summary>
    public double? StartTime { get; }

    /// <summary>Known floor, if any.</summary>
    public double? Floor { get; }

    /// <summary>Known rate per unit of time, if any.</summary>
    public double? Rate { get; }

    /// <summary>Whether single outliers are left out of the fit.</summary>
    public bool Robust { get; }

    /// <summary>Number of parts that are to be fitted, 1 to 3.</summary>
    internal int FreeParts => 3 - (Start.HasValue ? 1 : 0) - (Floor.HasValue ? 1 : 0) - (Rate.HasValue ? 1 : 0);

    /// <summary>A floor that is at its bound but for rounding is the bound itself, to the last digit.</summary>
    internal double FloorOf(double floor, double start) =>
        floor < Bound + 1e-9 * Math.Abs(start - Bound) ? Bound : floor;

    internal double Bound => LowestFloor ?? double.NegativeInfinity;

    /// <summary>The same for readings whose outliers are dealt with.</summary>
    internal ExponentialDecayOptions WithoutRobust() => With(Noise);

    /// <summary>The same with another noise and without a look at outliers.</summary>
    internal ExponentialDecayOptions With(DecayNoise noise) => new(noise, LowestFloor, Start, StartTime, Floor, Rate);

    private static void CheckFinite(double? value, string name)
    {
        if (value.HasValue)
        {
            Guard.Finite(value.Value, "", name);
        }
    }
}
