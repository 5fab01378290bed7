using System.Collections.Concurrent;
using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>
/// Student's distribution at one number of degrees of freedom for four values at once: the finite series of <see cref="StudentDistribution"/> with
/// its coefficients worked out beforehand.
/// </summary>
internal sealed class StudentSeries
{
    /// <summary>Pairs of terms that an arctangent takes: what is left out is below the last bit.</summary>
    private const int ArctangentPairs = 9;

    // Coefficients of the odd powers of a tangent up to 1, the highest first.
    private static readonly double[] Arctangent = CoefficientsOfArctangent();

    /// <summary>Beyond it Student's chance is 0 or 1 to the last digit, and the square is still a number.</summary>
    private const double Farthest = 1e10;
    private static readonly ConcurrentDictionary<int, StudentSeries> Series = new();

    private readonly double[] coefficients;
    private readonly bool odd;

    private readonly int degreesOfFreedom;
    private readonly Lanes scale;

    private StudentSeries(int degreesOfFreedom)
    {
        this.degreesOfFreedom = degreesOfFreedom;
        scale = LaneMath.Of(degreesOfFreedom);
        odd = (degreesOfFreedom & 1) == 1;
        coefficients = new double[degreesOfFreedom / 2];
        double term = 1;
        for (var i = 0; i < coefficients.Length; i++)
        {
            // The highest power first, as Horner's scheme takes them.
            coefficients[coefficients.Length - 1 - i] = term;
            term *= odd ? (2.0 * i + 2) / (2 * i + 3) : (2.0 * i + 1) / (2 * i + 2);
        }
    }

    /// <summary>The series at some degrees of freedom, worked out once.</summary>
    public static StudentSeries For(int degreesOfFreedom) =>
        Series.GetOrAdd(degreesOfFreedom, degrees => new StudentSeries(degrees));

    /// <summary>The chance of a value below each of four.</summary>
    public Lanes Below(Lanes t) =>
        Beyond(
            LaneMath.Max(LaneMath.Of(-Farthest), LaneMath.Min(LaneMath.Of(Farthest), default(Lanes) - t)),
            LaneMath.Of(1)
        );

    /// <summary>Whether the degrees of freedom are few enough for the series.</summary>
    public bool IsShort => degreesOfFreedom <= StudentDistribution.LongestSeries;

    /// <summary>The chance of a value below −gap/sqrt(variance); 0 or 1 where there is no variance.</summary>
    /// <param name="gap">Four distances, up to 1e150.</param>
    /// <param name="variance">The square of the unit of each, 0 or more, up to 1e300.</param>
    public Lanes Beyond(Lanes gap, Lanes variance) => IsShort ? BeyondOfShort(gap, variance) : OneByOne(gap, variance);

    /// <summary>The same where <see cref="IsShort"/>: without a call, so that the figures of a loop stay in the registers of the processor.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lanes BeyondOfShort(Lanes gap, Lanes variance)
    {
        Lanes zero = default;
        var (half, one) = (LaneMath.Of(0.5), LaneMath.Of(1));

        // With t/sqrt(ν) the tangent of an angle: the square of its cosine.
        var adjacent2 = scale * variance;
        var hypotenuse2 = LaneMath.MultiplyAdd(gap, gap, adjacent2);
        var cosine2 = adjacent2 / hypotenuse2;
        Lanes sum = default;
        foreach (var coefficient in coefficients)
        {
            sum = LaneMath.MultiplyAdd(sum, cosine2, LaneMath.Of(coefficient));
        }

        if (odd)
        {
            var adjacent = LaneMath.Sqrt(adjacent2);
            var sineTimesCosine = (zero - gap) * adjacent / hypotenuse2;
            sum = LaneMath.Of(2 / Math.PI) * LaneMath.MultiplyAdd(sineTimesCosine, sum, Angle(zero - gap, adjacent));
        }
        else
        {
            sum *= (zero - gap) / LaneMath.Sqrt(hypotenuse2);
        }

        var within = LaneMath.MultiplyAdd(half, sum, half);
        return LaneMath.WhereLess(
            zero,
            variance,
            LaneMath.Max(zero, LaneMath.Min(one, within)),
            LaneMath.WhereLess(zero, gap, zero, one)
        );
    }

    private Lanes OneByOne(Lanes gap, Lanes variance)
    {
        Span<double> four = stackalloc double[LaneMath.Width];
        for (var i = 0; i < four.Length; i++)
        {
            var (off, square) = (LaneMath.At(gap, i), LaneMath.At(variance, i));
            four[i] =
                square > 0 ? StudentDistribution.Below(-off / Math.Sqrt(square), degreesOfFreedom)
                : off > 0 ? 0
                : 1;
        }

        return LaneMath.Load(four, 0);
    }

    /// <summary>The angle between two sides, the adjacent one 0 or more: by its tangent or its cotangent, whichever is below 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Angle(Lanes opposite, Lanes adjacent)
    {
        Lanes zero = default;
        var length = LaneMath.Max(opposite, zero - opposite);
        var ratio = LaneMath.Min(length, adjacent) / LaneMath.Max(length, adjacent);
        var square = ratio * ratio;
        var fourth = square * square;
        Lanes high = default;
        Lanes low = default;
        for (var i = 0; i < 2 * ArctangentPairs; i += 2)
        {
            high = LaneMath.MultiplyAdd(high, fourth, LaneMath.Of(Arctangent[i]));
            low = LaneMath.MultiplyAdd(low, fourth, LaneMath.Of(Arctangent[i + 1]));
        }

        var angle = ratio * LaneMath.MultiplyAdd(high, square, low);
        angle = LaneMath.WhereLess(adjacent, length, LaneMath.Of(Math.PI / 2) - angle, angle);
        return LaneMath.WhereLess(opposite, zero, zero - angle, angle);
    }

    /// <summary>
    /// Chebyshev's series, arctan x = 2 Σ (−1)^k (√2 − 1)^(2k+1)/(2k+1) T_(2k+1)(x) for |x| up to 1 (Clenshaw 1962, Mathematical Tables 5, from memory), put in order
    /// of powers.
    /// </summary>
    private static double[] CoefficientsOfArctangent()
    {
        const int Terms = 2 * ArctangentPairs;
        var found = new double[Terms];
        var before = new double[Terms];
        var chebyshev = new double[Terms];
        (before[0], chebyshev[0]) = (1, 1);
        var factor = 2 * (Math.Sqrt(2) - 1);
        for (var k = 0; k < Terms; k++)
        {
            for (var j = 0; j <= k; j++)
            {
                found[Terms - 1 - j] += factor / (2 * k + 1) * chebyshev[j];
            }

            // T_(n+2) = (4 x² − 2) T_n − T_(n−2); both of order 1 below the first.
            var next = new double[Terms];
            for (var j = 0; j < Terms; j++)
            {
                next[j] = (j > 0 ? 4 * chebyshev[j - 1] : 0) - 2 * chebyshev[j] - before[j];
            }

            (before, chebyshev) = (chebyshev, next);
            factor *= -(3 - 2 * Math.Sqrt(2));
        }

        return found;
    }
}
