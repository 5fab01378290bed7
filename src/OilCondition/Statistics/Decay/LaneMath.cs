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

    // Cody and Waite's split of ln 2 (Software Manual for the Elementary Functions, 1980): n times the high part is exact.
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;
    private const double Log2E = 1.4426950408889634;

    /// <summary>1.5 · 2^52: adding it rounds to an integer, which then stands in the low bits.</summary>
    private const double Rounder = 6755399441055744.0;

    /// <summary>Beyond it exp(−x) is far below the last bit of 1.</summary>
    private const double LargestExponent = 700;

    /// <summary>1 − exp(−x) for x ≥ 0, to the last few bits also where x is tiny.</summary>
    /// <remarks>−x = n ln 2 + r, so that exp(−x) − 1 = 2^n (exp(r) − 1) + (2^n − 1) with |r| ≤ ln(2)/2: Taylor's series to r^13.</remarks>
    public static double Drop(double x)
    {
        x = Math.Min(x, LargestExponent);
        var shifted = Rounder - x * Log2E;
        var n = shifted - Rounder;
        var r = -x - n * Ln2High - n * Ln2Low;
        var power = BitConverter.Int64BitsToDouble(
            unchecked((BitConverter.DoubleToInt64Bits(shifted) << 52) + BitConverter.DoubleToInt64Bits(1.0))
        );
        var p = 1.0 / 6227020800;
        p = p * r + 1.0 / 479001600;
        p = p * r + 1.0 / 39916800;
        p = p * r + 1.0 / 3628800;
        p = p * r + 1.0 / 362880;
        p = p * r + 1.0 / 40320;
        p = p * r + 1.0 / 5040;
        p = p * r + 1.0 / 720;
        p = p * r + 1.0 / 120;
        p = p * r + 1.0 / 24;
        p = p * r + 1.0 / 6;
        p = p * r + 0.5;
        var growth = p * r * r + r;
        return (1 - power) - power * growth;
    }

#if NET
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes Drop(Lanes x)
    {
        x = Vector256.Min(x, Of(LargestExponent));
        var shifted = MultiplyAdd(x, Of(-Log2E), Of(Rounder));
        var n = shifted - Of(Rounder);
        var r = MultiplyAdd(n, Of(-Ln2Low), MultiplyAdd(n, Of(-Ln2High), -x));
        var power = (Vector256.ShiftLeft(shifted.AsInt64(), 52) + Of(1).AsInt64()).AsDouble();
        var p = Of(1.0 / 6227020800);
        p = MultiplyAdd(p, r, Of(1.0 / 479001600));
        p = MultiplyAdd(p, r, Of(1.0 / 39916800));
        p = MultiplyAdd(p, r, Of(1.0 / 3628800));
        p = MultiplyAdd(p, r, Of(1.0 / 362880));
        p = MultiplyAdd(p, r, Of(1.0 / 40320));
        p = MultiplyAdd(p, r, Of(1.0 / 5040));
        p = MultiplyAdd(p, r, Of(1.0 / 720));
        p = MultiplyAdd(p, r, Of(1.0 / 120));
        p = MultiplyAdd(p, r, Of(1.0 / 24));
        p = MultiplyAdd(p, r, Of(1.0 / 6));
        p = MultiplyAdd(p, r, Of(0.5));
        var growth = MultiplyAdd(p * r, r, r);
        return MultiplyAdd(-power, growth, Of(1) - power);
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
    public static double Sum(Lanes lanes) => Vector256.Sum(lanes);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes MultiplyAdd(Lanes x, Lanes y, Lanes z) => Vector256.MultiplyAddEstimate(x, y, z);
#else
    public static Lanes Drop(Lanes x) => new(Drop(x.A), Drop(x.B), Drop(x.C), Drop(x.D));

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

    public static double Sum(Lanes lanes) => lanes.A + lanes.C + (lanes.B + lanes.D);

    public static Lanes MultiplyAdd(Lanes x, Lanes y, Lanes z) => x * y + z;
#endif
}
