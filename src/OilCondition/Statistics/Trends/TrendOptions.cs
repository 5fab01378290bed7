using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>How a trend is to be judged. Everything has a default; name the arguments that differ.</summary>
public sealed class TrendOptions
{
    /// <summary>Fewest readings of which ranks can say anything at 95 %: four give two-sided 8 % at best.</summary>
    private const int LeastCount = 5;

    /// <summary>States how to judge.</summary>
    /// <param name="scale">Scale on which readings scatter evenly: logarithmic for particle counts.</param>
    /// <param name="confidence">Level of the interval of the slope, 0.5 to 0.9999; a trend is called where chance explains it in fewer than 1 − confidence of cases.</param>
    /// <param name="minimumCount">Fewest readings that are judged, 5 or more.</param>
    /// <param name="outlierSignificance">Chance of calling a sound reading wild, above 0 and below 0.5; null to look for none.</param>
    /// <param name="changeSignificance">Chance of seeing a change of level where there is none, above 0 and below 0.5; null to look for none.</param>
    /// <param name="smallestChange">Change over the time seen that matters, 0 or more, in the unit of the values (for example the repeatability of the method); on the logarithmic scale the ln of a ratio.</param>
    /// <param name="worse">The direction in which it gets worse, Rising or Falling; null for both. Only a step in the other one starts a series anew.</param>
    /// <param name="cycle">Period of a cycle that may be in the readings, in the unit of the times (365.25 for the year in days); null to look for none.</param>
    /// <param name="readingError">Standard deviation of one reading by its test method where that is known, 0 or more; on the logarithmic scale a fraction.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public TrendOptions(
        NaturalScale scale = NaturalScale.Linear,
        double confidence = 0.95,
        int minimumCount = LeastCount,
        double? outlierSignificance = 0.01,
        double? changeSignificance = 0.01,
        double smallestChange = 0,
        TrendVerdict? worse = null,
        double? cycle = null,
        double readingError = 0
    )
    {
        Scale = scale;
        Confidence = Guard.InRange(confidence, 0.5, 0.9999, "");
        MinimumCount = Numbers.InRange(minimumCount, LeastCount, int.MaxValue, nameof(minimumCount));
        OutlierSignificance = Chance(outlierSignificance, nameof(outlierSignificance));
        ChangeSignificance = Chance(changeSignificance, nameof(changeSignificance));
        SmallestChange = Guard.InRange(smallestChange, 0, 1e100, "");
        Worse = worse is null or TrendVerdict.Rising or TrendVerdict.Falling
            ? worse
            : throw new ArgumentOutOfRangeException(
                nameof(worse),
                $"worse is {worse}; allowed: Rising, Falling or null."
            );
        Cycle = cycle is { } period ? Guard.Positive(period, "", nameof(cycle)) : null;
        ReadingError = Guard.InRange(readingError, 0, 1e100, "");
    }

    /// <summary>Natural scale, 95 %, five readings, 1 % each for wild readings and changes of level.</summary>
    public static TrendOptions Default { get; } = new();

    /// <summary>Scale on which readings scatter evenly.</summary>
    public NaturalScale Scale { get; }

    /// <summary>Level of the interval of the slope.</summary>
    public double Confidence { get; }

    /// <summary>Fewest readings that are judged.</summary>
    public int MinimumCount { get; }

    /// <summary>Chance of calling a sound reading wild; null if none is looked for.</summary>
    public double? OutlierSignificance { get; }

    /// <summary>Chance of seeing a change of level where there is none; null if none is looked for.</summary>
    public double? ChangeSignificance { get; }

    /// <summary>Change over the time seen that matters.</summary>
    public double SmallestChange { get; }

    /// <summary>The direction in which it gets worse; null for both.</summary>
    public TrendVerdict? Worse { get; }

    /// <summary>Period of a cycle that is looked for, in the unit of the times; null for none.</summary>
    public double? Cycle { get; }

    /// <summary>Standard deviation of one reading by its test method; 0 where it is not known.</summary>
    public double ReadingError { get; }

    private static double? Chance(double? value, string name) =>
        value is null or (> 0 and < 0.5)
            ? value
            : throw new ArgumentOutOfRangeException(name, $"{name} is {value:G7}; allowed: above 0 and below 0.5.");
}
