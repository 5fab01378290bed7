#if NET
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace OilCondition.Statistics;

/// <summary>Order statistics of pair slopes by counting: exact, without moving them, and without a branch that depends on a slope.</summary>
/// <remarks>
/// A pass counts the slopes below a guess and keeps the largest below and the smallest not below it. These close in on the one sought, until
/// one of them is it. Near the middle the slopes lie about as densely as a straight line tells: a step of its standard error passes
/// sqrt(Var S)/2 of them. That gives the first guesses; the counts at both ends of what is left give the others.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly ref struct SlopeSearch
{
    // Slopes that no guess parts well, as those that spread over many powers of ten, are left to selection.
    private const int MostPasses = 30;
    private const int ByDensity = 4;

    private readonly Span<double> slopes;
    private readonly double lowest;
    private readonly double highest;
    private readonly double density;

    /// <param name="slopes">The slopes; put into another order where selection has to help.</param>
    /// <param name="density">Slopes expected per unit of slope, for the first guesses.</param>
    public SlopeSearch(Span<double> slopes, double density)
    {
        this.slopes = slopes;
        this.density = density;
        var (low, high) = (slopes[0], slopes[0]);
        var i = 0;
        if (slopes.Length >= LaneMath.Width)
        {
            var (lows, highs) = (LaneMath.Load(slopes, 0), LaneMath.Load(slopes, 0));
            for (i = LaneMath.Width; i <= slopes.Length - LaneMath.Width; i += LaneMath.Width)
            {
                var v = LaneMath.Load(slopes, i);
                lows = Vector256.MinNative(lows, v);
                highs = Vector256.MaxNative(highs, v);
            }

            (low, high) = (Smallest(lows), -Smallest(-highs));
        }

        for (; i < slopes.Length; i++)
        {
            low = Math.Min(low, slopes[i]);
            high = Math.Max(high, slopes[i]);
        }

        (lowest, highest) = (low, high);
    }

    /// <summary>The slope of a rank counted from 1, fractions interpolated, as <see cref="Selection.AtRank"/>.</summary>
    /// <param name="rank">The rank.</param>
    /// <param name="near">A slope that may be near.</param>
    public double AtRank(double rank, double near)
    {
        var whole = (int)Math.Floor(rank);
        var index = Math.Min(Math.Max(whole, 1), slopes.Length) - 1;
        var fraction = whole < 1 || index + 1 >= slopes.Length ? 0 : rank - whole;
        var (low, high) = (lowest, highest);
        var (lowCount, highCount) = (0, slopes.Length);
        var guess = near;
        for (var pass = 1; low < high; pass++)
        {
            if (pass > MostPasses)
            {
                return Selection.AtRank(slopes, rank);
            }

            if (!(guess > low && guess <= high))
            {
                // At the lower end the guess would part nothing from nothing.
                var between = low + (high - low) * (index + 1 - lowCount) / (highCount - lowCount);
                guess = between > low && between <= high ? between : high;
            }

            var (count, below, from) = Part(guess);
            if (count == index + 1)
            {
                return fraction > 0 ? below + fraction * (from - below) : below;
            }

            if (count == index && !(fraction > 0))
            {
                return from;
            }

            if (count <= index)
            {
                (low, lowCount) = (from, count);
            }
            else
            {
                (high, highCount) = (below, count);
            }

            guess =
                pass < ByDensity ? guess + (index + 1 - count) / density
                : pass % 3 == 0 ? low + (high - low) / 2
                : double.NaN;
        }

        return fraction > 0 ? low + fraction * (Next(low, index) - low) : low;
    }

    private static double Smallest(Vector256<double> v) =>
        Math.Min(Math.Min(v.GetElement(0), v.GetElement(1)), Math.Min(v.GetElement(2), v.GetElement(3)));

    /// <summary>The slope that follows the one at an index, whose value is known.</summary>
    private double Next(double value, int index)
    {
        var (count, _, from) = Part(Math.BitIncrement(value));
        return count > index + 1 ? value : from;
    }

    /// <summary>How many slopes lie below a value, the largest of them, and the smallest of the others.</summary>
    private (int Count, double Below, double From) Part(double value)
    {
        long count = 0;
        var below = double.NegativeInfinity;
        var from = double.PositiveInfinity;
        var i = 0;
        if (slopes.Length >= LaneMath.Width)
        {
            var (lows, highs) = (LaneMath.Of(below), LaneMath.Of(from));
            var (least, most) = (lows, highs);
            var at = LaneMath.Of(value);
            var counts = Vector256<long>.Zero;
            for (; i <= slopes.Length - LaneMath.Width; i += LaneMath.Width)
            {
                var v = LaneMath.Load(slopes, i);
                var isBelow = Vector256.LessThan(v, at);
                counts -= isBelow.AsInt64();
                lows = Vector256.MaxNative(lows, Vector256.ConditionalSelect(isBelow, v, least));
                highs = Vector256.MinNative(highs, Vector256.ConditionalSelect(isBelow, most, v));
            }

            count = Vector256.Sum(counts);
            (below, from) = (-Smallest(-lows), Smallest(highs));
        }

        for (; i < slopes.Length; i++)
        {
            if (slopes[i] < value)
            {
                count++;
                below = Math.Max(below, slopes[i]);
            }
            else
            {
                from = Math.Min(from, slopes[i]);
            }
        }

        return ((int)count, below, from);
    }
}
#endif
