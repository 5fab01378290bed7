using System.Collections.Concurrent;

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
        scale = LaneMath.Of(1 / Math.Sqrt(degreesOfFreedom));
        odd = (degreesOfFreedom & 1) == 1;
        coefficients = new double[degreesOfFreedom / 2];
        double term = 1;
        for (var i = 0; i < coefficients.Length; i++)
        {
            coefficients[i] = term;
            term *= odd ? (2.0 * i + 2) / (2 * i + 3) : (2.0 * i + 1) / (2 * i + 2);
        }
    }

    /// <summary>The series at some degrees of freedom, worked out once.</summary>
    public static StudentSeries For(int degreesOfFreedom) =>
        Series.GetOrAdd(degreesOfFreedom, degrees => new StudentSeries(degrees));

    /// <summary>The chance of a value below each of four.</summary>
    public Lanes Below(Lanes t)
    {
        if (degreesOfFreedom > StudentDistribution.LongestSeries)
        {
            Span<double> four = stackalloc double[LaneMath.Width];
            LaneMath.Store(t, four, 0);
            for (var i = 0; i < four.Length; i++)
            {
                four[i] = StudentDistribution.Below(four[i], degreesOfFreedom);
            }

            return LaneMath.Load(four, 0);
        }

        var y = t * scale;
        return Below(LaneMath.Max(LaneMath.Of(-Farthest), LaneMath.Min(LaneMath.Of(Farthest), y)), out _);
    }

    /// <summary>The chance of a value below y sqrt(ν), |y| up to 1e10.</summary>
    /// <param name="y">The value over sqrt(ν).</param>
    /// <param name="cosine2">1/(1 + y²).</param>
    public Lanes Below(Lanes y, out Lanes cosine2)
    {
        var one = LaneMath.Of(1);
        cosine2 = one / (one + y * y);
        var cosine = LaneMath.Sqrt(cosine2);
        var sine = y * cosine;
        Lanes sum = default;
        for (var i = coefficients.Length - 1; i >= 0; i--)
        {
            sum = LaneMath.MultiplyAdd(sum, cosine2, LaneMath.Of(coefficients[i]));
        }

        var between = odd
            ? LaneMath.Of(2 / Math.PI) * LaneMath.MultiplyAdd(sine * cosine, sum, Angle(sine, cosine))
            : sine * sum;
        return LaneMath.Of(0.5) * (one + LaneMath.Max(LaneMath.Of(-1), LaneMath.Min(one, between)));
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
