using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>The scale numbers of ISO 4406.</summary>
/// <remarks>
/// A count belongs to a scale number when it is more than the number's lower limit and up to and including its upper limit.
/// The upper limits are those of the standard's table (0.01, 0.02 … 0.64, 1.3, 2.5, 5 … per mL), which are not powers of two.
/// </remarks>
public static class Iso4406
{
    /// <summary>The highest scale number of the table. Higher counts are above the table.</summary>
    public const int HighestScaleNumber = 28;

    private static readonly double[] Upper =
    [
        0.01,
        0.02,
        0.04,
        0.08,
        0.16,
        0.32,
        0.64,
        1.3,
        2.5,
        5,
        10,
        20,
        40,
        80,
        160,
        320,
        640,
        1300,
        2500,
        5000,
        10000,
        20000,
        40000,
        80000,
        160000,
        320000,
        640000,
        1300000,
        2500000,
    ];

    /// <summary>Where the table comes from.</summary>
    public static Source Source { get; } = new(SourceKind.Standard, "ISO 4406:2021", "Table 1");

    /// <summary>The scale number of a count.</summary>
    /// <param name="countPerMillilitre">Particles per millilitre at and above one size, 0 or more.</param>
    /// <returns>0 to 28, or 29 for a count above the end of the table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative or not finite.</exception>
    public static int ScaleNumber(double countPerMillilitre)
    {
        Guard.NotNegative(countPerMillilitre, "per mL");
        var index = Array.BinarySearch(Upper, countPerMillilitre);
        return index >= 0 ? index : ~index;
    }

    /// <summary>The highest count that still belongs to a scale number.</summary>
    /// <param name="scaleNumber">0 to 28.</param>
    /// <returns>Particles per millilitre, inclusive.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside 0 to 28.</exception>
    public static double UpperLimitPerMillilitre(int scaleNumber) =>
        Upper[(int)Guard.InRange(scaleNumber, 0, HighestScaleNumber, "(scale number)")];

    /// <summary>The count above which a scale number begins.</summary>
    /// <param name="scaleNumber">0 to 29; 29 stands for above the table.</param>
    /// <returns>Particles per millilitre, exclusive; 0 for scale number 0, to which a count of 0 also belongs here.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside 0 to 29.</exception>
    public static double LowerLimitPerMillilitre(int scaleNumber)
    {
        var number = (int)Guard.InRange(scaleNumber, 0, HighestScaleNumber + 1, "(scale number)");
        return number == 0 ? 0 : Upper[number - 1];
    }

    /// <summary>A count that stands for a scale number in plots and fits: the geometric mean of its limits.</summary>
    /// <remarks>
    /// n = √(lower·upper), per mL; for scale number 0, which begins at 0, half its upper limit (common practice, no source).
    /// A code gives no more than its limits: where counts are known, plot the counts.
    /// </remarks>
    /// <param name="scaleNumber">0 to 28.</param>
    /// <returns>Particles per millilitre.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside 0 to 28.</exception>
    public static double TypicalCountPerMillilitre(int scaleNumber)
    {
        var upper = UpperLimitPerMillilitre(scaleNumber);
        return scaleNumber == 0 ? upper / 2 : Math.Sqrt(LowerLimitPerMillilitre(scaleNumber) * upper);
    }
}
