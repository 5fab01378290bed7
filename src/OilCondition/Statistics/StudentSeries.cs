using System.Collections.Concurrent;
using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>
/// Student's distribution at one number of degrees of freedom for four values at once: the finite series of <see cref="StudentDistribution"/> with
/// its coefficients worked out beforehand.
/// </summary>
internal sealed class StudentSeries
{
    private static readonly double[] Arctangent =
    [
        .. Enumerable.Range(0, 12).Select(k => (k % 2 == 0 ? 1.0 : -1) / (2 * k + 1)),
    ];

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

    /// <summary>The chance of a value below −gap/sqrt(variance); 0 or 1 where there is no variance.</summary>
    /// <param name="gap">Four distances, up to 1e150.</param>
    /// <param name="variance">The square of the unit of each, 0 or more, up to 1e300.</param>
    public Lanes Beyond(Lanes gap, Lanes variance) =>
        IsEven ? BeyondOfEven(gap, variance)
        : odd && degreesOfFreedom <= StudentDistribution.LongestSeries ? BeyondOfOdd(gap, variance)
        : OneByOne(gap, variance);

    /// <summary>Whether the degrees of freedom are even, and few enough for the series.</summary>
    public bool IsEven => !odd && degreesOfFreedom <= StudentDistribution.LongestSeries;

    /// <summary>The same where <see cref="IsEven"/>: without a call, so that the figures of a loop stay in the registers of the processor.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lanes BeyondOfEven(Lanes gap, Lanes variance)
    {
        var sum = Sum(gap, variance, out var sine, out _);
        return Chance(sum * sine, gap, variance);
    }

    private Lanes BeyondOfOdd(Lanes gap, Lanes variance)
    {
        var sum = Sum(gap, variance, out var sine, out var cosine2);
        var cosine = LaneMath.Sqrt(cosine2);
        var angle = LaneMath.MultiplyAdd(sine * cosine, sum, Angle(sine, cosine));
        return Chance(LaneMath.Of(2 / Math.PI) * angle, gap, variance);
    }

    /// <summary>The sum of the series. With y = t/sqrt(ν) the tangent of an angle: its sine and the square of its cosine, by one root.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lanes Sum(Lanes gap, Lanes variance, out Lanes sine, out Lanes cosine2)
    {
        var adjacent = scale * variance;
        var hypotenuse = LaneMath.MultiplyAdd(gap, gap, adjacent);
        cosine2 = adjacent / hypotenuse;
        sine = (default(Lanes) - gap) / LaneMath.Sqrt(hypotenuse);
        Lanes sum = default;
        foreach (var coefficient in coefficients)
        {
            sum = LaneMath.MultiplyAdd(sum, cosine2, LaneMath.Of(coefficient));
        }

        return sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Chance(Lanes within, Lanes gap, Lanes variance)
    {
        Lanes zero = default;
        var (half, one) = (LaneMath.Of(0.5), LaneMath.Of(1));
        var chance = LaneMath.MultiplyAdd(half, within, half);
        return LaneMath.WhereLess(
            zero,
            variance,
            LaneMath.Max(zero, LaneMath.Min(one, chance)),
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

    /// <summary>The angle of a sine with a positive cosine: halved three times by its tangent, then the power series.</summary>
    private static Lanes Angle(Lanes sine, Lanes cosine)
    {
        var one = LaneMath.Of(1);
        var tangent = sine / (one + cosine);
        tangent /= one + LaneMath.Sqrt(one + tangent * tangent);
        tangent /= one + LaneMath.Sqrt(one + tangent * tangent);
        var square = tangent * tangent;
        var sum = LaneMath.Of(Arctangent[Arctangent.Length - 1]);
        for (var k = Arctangent.Length - 2; k >= 0; k--)
        {
            sum = LaneMath.MultiplyAdd(sum, square, LaneMath.Of(Arctangent[k]));
        }

        return LaneMath.Of(8) * tangent * sum;
    }
}
