using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The piece between two points of a smooth curve through points that never fall, which never falls either.</summary>
/// <remarks>
/// A cubic with a slope at each of its ends: the weighted harmonic mean of the slopes of the straight lines on both sides, 0 where one of these is level
/// (Fritsch and Butland 1984, SIAM J. Sci. Stat. Comput. 5, 300), and at the first and last point that of the line there is. Such a
/// cubic stays between the values of its ends (Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17, 238).
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct MonotoneCubic
{
    private const int MostSteps = 60;
    private const double Rounding = 1e-16;

    private readonly double from;
    private readonly double rise;

    // How far the slopes at both ends, over the whole piece, are from the rise.
    private readonly double early;
    private readonly double late;

    /// <summary>The piece between two points that follow one another.</summary>
    /// <param name="x">Where the points lie, ascending.</param>
    /// <param name="y">Their values, which never fall.</param>
    /// <param name="after">Index of the later of the two, above 0.</param>
    public MonotoneCubic(ReadOnlySpan<float> x, ReadOnlySpan<float> y, int after)
    {
        var width = (double)x[after] - x[after - 1];
        from = y[after - 1];
        rise = y[after] - from;
        early = after > 1 ? width * Slope(x, y, after - 1) - rise : 0;
        late = after < x.Length - 1 ? width * Slope(x, y, after) - rise : 0;
    }

    private MonotoneCubic(double from, double to)
    {
        this.from = from;
        rise = to - from;
    }

    /// <summary>The straight piece from a value to another.</summary>
    public static MonotoneCubic Chord(double from, double to) => new(from, to);

    /// <summary>How far the middle lies above that of the straight line.</summary>
    public double Bend => (early - late) / 8;

    /// <summary>The value at a part of the way from the one point to the other, 0 to 1: Hermite's cubic about the straight line.</summary>
    public double At(double part) => from + part * (rise + (1 - part) * ((1 - part) * early - part * late));

    /// <summary>The part of the way at which a value is reached that lies between those of the ends.</summary>
    public double PartOf(double value)
    {
        double low = 0;
        double high = 1;
        var part = (value - from) / rise;
        for (var i = 0; i < MostSteps; i++)
        {
            var off = At(part) - value;
            (low, high) = off < 0 ? (part, high) : (low, part);

            // Newton's step, or the middle where that leads out.
            var next = part - off / Steepness(part);
            next = next >= low && next <= high ? next : (low + high) / 2;
            if (Math.Abs(next - part) <= Rounding)
            {
                break;
            }

            part = next;
        }

        return part;
    }

    private double Steepness(double part) => rise + (1 - part) * (1 - 3 * part) * early - part * (2 - 3 * part) * late;

    /// <summary>3 (g + h) / ((2 h + g)/d + (2 g + h)/e) with gaps g and h and slopes d and e before and after, written with one division.</summary>
    private static double Slope(ReadOnlySpan<float> x, ReadOnlySpan<float> y, int at)
    {
        var (before, after) = ((double)x[at] - x[at - 1], (double)x[at + 1] - x[at]);
        var (first, second) = (((double)y[at] - y[at - 1]) * after, ((double)y[at + 1] - y[at]) * before);
        return first > 0 && second > 0
            ? 3
                * (before + after)
                * first
                * second
                / (before * after * ((2 * after + before) * second + (2 * before + after) * first))
            : 0;
    }
}
