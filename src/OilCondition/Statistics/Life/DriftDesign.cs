using System.Buffers;
using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A drift that walks, an integrated Wiener process whose start and first drift are free, over the dates of some readings: all that does not depend on what was read.</summary>
/// <remarks>Wecker and Ansley 1983: the smoothing spline as a signal in noise.</remarks>
internal sealed class DriftDesign : IDisposable
{
    private const int MostOnStack = 256;

    private readonly Course course;
    private readonly int count;

    // Rented, as that of a family is.
    private readonly Row[] rows;
    private readonly double logDeterminant;
    private readonly (double V0, double C1, double C2, double C3) variance;

    /// <summary>Inverse of what the readings tell of start and first drift.</summary>
    private readonly (double Start, double Drift, double Both) inverse;

    /// <summary>How far start and first drift reach: u0 + u1 x, w0 + w1 x after x.</summary>
    private readonly (double U0, double U1, double W0, double W1) reach;

    public DriftDesign(Course course, ReadOnlySpan<double> clock, double ratio)
    {
        this.course = course;
        count = clock.Length;
        rows = ArrayPool<Row>.Shared.Rent(count);

        // At u = 1 the integrated process has variance q/3.
        var q = 3 * ratio;
        double p11 = 0;
        double p12 = 0;
        double p22 = 0;
        var (a0, a1, b0, b1) = (0.0, 0.0, 0.0, 0.0);
        var (aa, bb, ab) = (0.0, 0.0, 0.0);
        double logs = 0;
        for (var i = 0; i < count; i++)
        {
            var d = i > 0 ? clock[i] - clock[i - 1] : 0;
            p11 += d * (2 * p12 + d * (p22 + q * d / 3));
            p12 += d * (p22 + q * d / 2);
            p22 += q * d;
            a0 += d * a1;
            b0 += d * b1;
            var f = p11 + 1;
            var (va, vb) = (1 - a0, clock[i] - b0);
            var (k0, k1) = (p11 / f, p12 / f);
            a0 += k0 * va;
            a1 += k1 * va;
            b0 += k0 * vb;
            b1 += k1 * vb;
            p22 -= k1 * p12;
            p12 -= k0 * p12;
            p11 -= k0 * p11;
            logs += Math.Log(f);
            rows[i] = new Row(d, k0, k1, va / f, vb / f, 1 / f);
            aa += va * va / f;
            bb += vb * vb / f;
            ab += va * vb / f;
        }

        var determinant = aa * bb - ab * ab;
        logDeterminant = logs + Math.Log(aa) + Math.Log(count + 1);
        var (u0, u1, w0, w1) = reach = (1 - a0, -a1, 1 - b0, 1 - b1);
        var (vaa, vbb, vab) = inverse = (bb / determinant, aa / determinant, -ab / determinant);
        variance = (
            p11 + u0 * u0 * vaa + 2 * u0 * w0 * vab + w0 * w0 * vbb,
            2 * (p12 + u0 * u1 * vaa + (u0 * w1 + u1 * w0) * vab + w0 * w1 * vbb),
            p22 + u1 * u1 * vaa + 2 * u1 * w1 * vab + w1 * w1 * vbb,
            q / 3
        );
    }

    /// <summary>The drift of a movement over times that are parts of that from the first to the last.</summary>
    public static DriftDesign Of(Movement movement, ReadOnlySpan<double> positions)
    {
        Span<double> clock =
            positions.Length <= MostOnStack ? stackalloc double[positions.Length] : new double[positions.Length];
        for (var i = 0; i < clock.Length; i++)
        {
            clock[i] = movement.Course.At(positions[i]);
        }

        return new DriftDesign(movement.Course, clock, movement.Ratio);
    }

    /// <summary>Gives back the room; nothing can be read any more.</summary>
    public void Dispose() => ArrayPool<Row>.Shared.Return(rows);

    /// <summary>Reads the readings.</summary>
    public DegradationMember Read(ReadOnlySpan<double> values, double leastSquares)
    {
        // From the first reading on: the start is free, and a level far above what the readings scatter would take the digits of their squares.
        var level = values[0];
        var (y0, y1) = (0.0, 0.0);
        var (yy, ya, yb) = (0.0, 0.0, 0.0);
        for (var i = 0; i < count; i++)
        {
            ref readonly var row = ref rows[i];
            y0 += row.Step * y1;
            var off = values[i] - level - y0;
            y0 += row.LevelGain * off;
            y1 += row.DriftGain * off;
            yy += off * off * row.Over;
            ya += off * row.Start;
            yb += off * row.Drift;
        }

        var start = inverse.Start * ya + inverse.Both * yb;
        var slope = inverse.Drift * yb + inverse.Both * ya;
        return new DegradationMember(
            course,
            logDeterminant,
            Math.Max(yy - start * ya - slope * yb, leastSquares),
            count,
            count - 2,
            level + y0 + start * reach.U0 + slope * reach.W0,
            y1 + start * reach.U1 + slope * reach.W1,
            variance,
            walking: 0,
            readingShare: 1
        );
    }

    /// <summary>One step of the Kalman filter.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Row(
        double Step,
        double LevelGain,
        double DriftGain,
        double Start,
        double Drift,
        double Over
    );
}
