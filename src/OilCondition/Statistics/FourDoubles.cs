#if !NET
using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Four doubles at once where the runtime has no vector type of its own: the same kernel source, one lane after the other.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct FourDoubles(double a, double b, double c, double d)
{
    public double A { get; } = a;
    public double B { get; } = b;
    public double C { get; } = c;
    public double D { get; } = d;

    public static FourDoubles operator +(in FourDoubles x, in FourDoubles y) =>
        new(x.A + y.A, x.B + y.B, x.C + y.C, x.D + y.D);

    public static FourDoubles operator -(in FourDoubles x, in FourDoubles y) =>
        new(x.A - y.A, x.B - y.B, x.C - y.C, x.D - y.D);

    public static FourDoubles operator /(in FourDoubles x, in FourDoubles y) =>
        new(x.A / y.A, x.B / y.B, x.C / y.C, x.D / y.D);

    public static FourDoubles operator *(in FourDoubles x, in FourDoubles y) =>
        new(x.A * y.A, x.B * y.B, x.C * y.C, x.D * y.D);
}
#endif
