#if NET
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
#endif

namespace OilCondition.Statistics;

/// <summary>The few operations on four doubles that the decay kernel needs, for both builds.</summary>
internal static class LaneMath
{
    public const int Width = 4;

    /// <summary>Whether all values lie in a closed range; false for NaN.</summary>
    public static bool AreWithin(ReadOnlySpan<double> values, double from, double to)
    {
        var inside = true;
        var i = 0;
#if NET
        var all = Vector256<double>.AllBitsSet;
        for (; i <= values.Length - Width; i += Width)
        {
            var v = Load(values, i);
            all &= Vector256.GreaterThanOrEqual(v, Of(from)) & Vector256.LessThanOrEqual(v, Of(to));
        }

        inside = Vector256.EqualsAll(all.AsInt64(), Vector256<long>.AllBitsSet);
#endif
        for (; i < values.Length; i++)
        {
            inside &= values[i] >= from && values[i] <= to;
        }

        return inside;
    }

    /// <summary>The smallest of some values; 0 if there are none.</summary>
    public static double Smallest(ReadOnlySpan<double> values)
    {
        var smallest = values.IsEmpty ? 0 : values[0];
        var i = 0;
#if NET
        if (values.Length >= Width)
        {
            var all = Load(values, 0);
            for (i = Width; i <= values.Length - Width; i += Width)
            {
                all = Vector256.MinNative(all, Load(values, i));
            }

            smallest = -Largest(-all);
        }
#endif
        for (; i < values.Length; i++)
        {
            smallest = Math.Min(smallest, values[i]);
        }

        return smallest;
    }

    // Cody and Waite's split of ln 2 (Software Manual for the Elementary Functions, 1980): n times the high part is exact.
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;
    private const double Log2E = 1.4426950408889634;

    /// <summary>1.5 · 2^52: adding it rounds to an integer, which then stands in the low bits.</summary>
    private const double Rounder = 6755399441055744.0;

    /// <summary>Beyond it exp(−x) is far below the last bit of 1.</summary>
    private const double LargestExponent = 700;

    /// <summary>1 − exp(−x) for x ≥ 0, to the last few bits also where x is tiny.</summary>
    /// <remarks>−x = n ln 2 + r, so that exp(−x) − 1 = 2^n (exp(r) − 1) + (2^n − 1) with |r| ≤ ln(2)/2: Taylor's series to r^13,
    /// odd and even powers apart, which halves the chain of dependent steps.</remarks>
    public static double Drop(double x)
    {
        x = Math.Min(x, LargestExponent);
        var shifted = Rounder - x * Log2E;
        var n = shifted - Rounder;
        var r = -x - n * Ln2High - n * Ln2Low;
        var power = BitConverter.Int64BitsToDouble(
            unchecked((BitConverter.DoubleToInt64Bits(shifted) << 52) + BitConverter.DoubleToInt64Bits(1.0))
        );
        var square = r * r;
        var odd = 1.0 / 6227020800;
        odd = odd * square + 1.0 / 39916800;
        odd = odd * square + 1.0 / 362880;
        odd = odd * square + 1.0 / 5040;
        odd = odd * square + 1.0 / 120;
        odd = odd * square + 1.0 / 6;
        var even = 1.0 / 479001600;
        even = even * square + 1.0 / 3628800;
        even = even * square + 1.0 / 40320;
        even = even * square + 1.0 / 720;
        even = even * square + 1.0 / 24;
        even = even * square + 0.5;
        var growth = (odd * r + even) * square + r;
        return (1 - power) - power * growth;
    }

#if NET
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Drop(Lanes x)
    {
        var growth = Growth(-Vector256.MinNative(x, Of(LargestExponent)), out var power);
        return MultiplyAdd(-power, growth, Of(1) - power);
    }

    /// <summary>exp(x), x held within ±700.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Exp(Lanes x)
    {
        x = Vector256.MaxNative(Of(-LargestExponent), Vector256.MinNative(x, Of(LargestExponent)));
        var growth = Growth(x, out var power);
        return MultiplyAdd(power, growth, power);
    }

    /// <summary>exp(r) − 1 and 2^n, with x = n ln 2 + r.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Growth(Lanes x, out Lanes power)
    {
        var shifted = MultiplyAdd(x, Of(Log2E), Of(Rounder));
        var n = shifted - Of(Rounder);
        var r = MultiplyAdd(n, Of(-Ln2Low), MultiplyAdd(n, Of(-Ln2High), x));
        power = (Vector256.ShiftLeft(shifted.AsInt64(), 52) + Of(1).AsInt64()).AsDouble();
        var square = r * r;
        var odd = Of(1.0 / 6227020800);
        odd = MultiplyAdd(odd, square, Of(1.0 / 39916800));
        odd = MultiplyAdd(odd, square, Of(1.0 / 362880));
        odd = MultiplyAdd(odd, square, Of(1.0 / 5040));
        odd = MultiplyAdd(odd, square, Of(1.0 / 120));
        odd = MultiplyAdd(odd, square, Of(1.0 / 6));
        var even = Of(1.0 / 479001600);
        even = MultiplyAdd(even, square, Of(1.0 / 3628800));
        even = MultiplyAdd(even, square, Of(1.0 / 40320));
        even = MultiplyAdd(even, square, Of(1.0 / 720));
        even = MultiplyAdd(even, square, Of(1.0 / 24));
        even = MultiplyAdd(even, square, Of(0.5));
        return MultiplyAdd(MultiplyAdd(odd, r, even), square, r);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Load(ReadOnlySpan<double> from, int index) =>
        Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(from), (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lanes lanes, Span<double> to, int index) =>
        lanes.StoreUnsafe(ref MemoryMarshal.GetReference(to), (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Of(double value) => Vector256.Create(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Of(double a, double b, double c, double d) => Vector256.Create(a, b, c, d);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Sum(Lanes lanes) => Vector256.Sum(lanes);

    /// <summary>The four sums, one a lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Sums(Lanes a, Lanes b, Lanes c, Lanes d) => Vector256.Create(Sum(a), Sum(b), Sum(c), Sum(d));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes MultiplyAdd(Lanes x, Lanes y, Lanes z) => Vector256.MultiplyAddEstimate(x, y, z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Max(Lanes x, Lanes y) => Vector256.MaxNative(x, y);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Min(Lanes x, Lanes y) => Vector256.MinNative(x, y);

    /// <summary>ln x.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Log(Lanes x) => Vector256.Log(x);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Sqrt(Lanes x) => Vector256.Sqrt(x);

    /// <summary>x where a is below b, else y.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes WhereLess(Lanes a, Lanes b, Lanes x, Lanes y) =>
        Vector256.ConditionalSelect(Vector256.LessThan(a, b), x, y);

    /// <summary>Whether a is below b in all four; false for NaN.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AreLess(Lanes a, Lanes b) => Vector256.LessThanAll(a, b);

    /// <summary>One of the four.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double At(Lanes lanes, int index) => lanes.GetElement(index);

    public static double Largest(Lanes x) => Math.Max(Math.Max(x[0], x[1]), Math.Max(x[2], x[3]));
#else
    public static Lanes Drop(Lanes x) => new(Drop(x.A), Drop(x.B), Drop(x.C), Drop(x.D));

    public static Lanes Exp(Lanes x) => new(Exp(x.A), Exp(x.B), Exp(x.C), Exp(x.D));

    private static double Exp(double x) => Math.Exp(Math.Max(-LargestExponent, Math.Min(x, LargestExponent)));

    public static Lanes Load(ReadOnlySpan<double> from, int index) =>
        new(from[index], from[index + 1], from[index + 2], from[index + 3]);

    public static void Store(Lanes lanes, Span<double> to, int index)
    {
        to[index] = lanes.A;
        to[index + 1] = lanes.B;
        to[index + 2] = lanes.C;
        to[index + 3] = lanes.D;
    }

    public static Lanes Of(double value) => new(value, value, value, value);

    public static Lanes Of(double a, double b, double c, double d) => new(a, b, c, d);

    public static double Sum(Lanes lanes) => lanes.A + lanes.C + (lanes.B + lanes.D);

    public static Lanes Sums(Lanes a, Lanes b, Lanes c, Lanes d) => new(Sum(a), Sum(b), Sum(c), Sum(d));

    public static Lanes MultiplyAdd(Lanes x, Lanes y, Lanes z) => x * y + z;

    public static Lanes Max(Lanes x, Lanes y) =>
        new(Math.Max(x.A, y.A), Math.Max(x.B, y.B), Math.Max(x.C, y.C), Math.Max(x.D, y.D));

    public static Lanes Min(Lanes x, Lanes y) =>
        new(Math.Min(x.A, y.A), Math.Min(x.B, y.B), Math.Min(x.C, y.C), Math.Min(x.D, y.D));

    public static Lanes Log(Lanes x) => new(Math.Log(x.A), Math.Log(x.B), Math.Log(x.C), Math.Log(x.D));

    public static Lanes Sqrt(Lanes x) => new(Math.Sqrt(x.A), Math.Sqrt(x.B), Math.Sqrt(x.C), Math.Sqrt(x.D));

    public static Lanes WhereLess(Lanes a, Lanes b, Lanes x, Lanes y) =>
        new(a.A < b.A ? x.A : y.A, a.B < b.B ? x.B : y.B, a.C < b.C ? x.C : y.C, a.D < b.D ? x.D : y.D);

    public static bool AreLess(Lanes a, Lanes b) => a.A < b.A && a.B < b.B && a.C < b.C && a.D < b.D;

    public static double At(Lanes lanes, int index) =>
        index switch
        {
            0 => lanes.A,
            1 => lanes.B,
            2 => lanes.C,
            _ => lanes.D,
        };

    public static double Largest(Lanes x) => Math.Max(Math.Max(x.A, x.B), Math.Max(x.C, x.D));
#endif
}
