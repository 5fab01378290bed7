using System.Buffers;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>The family of movements that a series may follow: a mean that stands or follows a course, with a random walk, or a drift that walks; measured with noise.</summary>
internal static class Degradation
{
    /// <summary>Fewest readings at different times.</summary>
    public const int FewestReadings = 4;

    /// <summary>Fewest readings at different times where other machines have taught scatter and drift.</summary>
    public const int FewestWithFleet = 3;

    /// <summary>Values beyond this have squares that overflow; no measurand comes near.</summary>
    internal const double Largest = 1e100;

    /// <summary>Fits every movement of the family.</summary>
    /// <param name="times">When readings were taken, ascending; readings at one time count as their mean.</param>
    /// <param name="values">What was read, on a scale on which the scatter is even.</param>
    /// <param name="prior">What is believed beforehand; <see cref="DegradationPrior.Default"/> without one.</param>
    /// <param name="readingError">Standard deviation of one reading by its test method; 0 where it is not known.</param>
    /// <param name="designs">Designs to be shared with other fits over the same dates; null for none.</param>
    /// <returns>The fit, or the reason why there is none.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the times do not ascend.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time is not finite, or a value lies beyond ±1e100.</exception>
    public static DegradationFit Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        DegradationPrior? prior = null,
        double readingError = 0,
        FamilyDesigns? designs = null
    )
    {
        Guard.SameLength(values.Length, times.Length, nameof(values), nameof(times));
        var room = ArrayPool<double>.Shared.Rent(times.Length);
        var means = Merged(times, values, room);
        var distinct = room.AsSpan(0, means.Length);
        var fit = new DegradationFit(distinct, means, prior ?? DegradationPrior.Default, readingError, designs);
        ArrayPool<double>.Shared.Return(room);
        return fit;
    }

    /// <summary>Each time once, and the means of their readings.</summary>
    private static double[] Merged(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double[] merged)
    {
        var count = 0;
        for (var i = 0; i < times.Length; i++)
        {
            Guard.Finite(times[i], "", nameof(times));
            Guard.InRange(values[i], -Largest, Largest, "", nameof(values));
            if (i > 0 && times[i] < times[i - 1])
            {
                throw new ArgumentException("times must ascend.", nameof(times));
            }

            count += i > 0 && times[i] == times[i - 1] ? 0 : 1;
        }

        var means = new double[count];
        var at = -1;
        var alike = 0;
        for (var i = 0; i < times.Length; i++)
        {
            if (at >= 0 && times[i] == merged[at])
            {
                alike++;
                means[at] += (values[i] - means[at]) / alike;
                continue;
            }

            (merged[++at], means[at]) = (times[i], values[i]);
            alike = 1;
        }

        return means;
    }
}
