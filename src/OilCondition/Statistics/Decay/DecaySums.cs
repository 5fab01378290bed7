using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Weighted sums over a series at one rate: of d, d² and d y, d = 1 − exp(−κ τ), with their derivatives by ln κ.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecaySums(
    double d,
    double dd,
    double dy,
    double d1 = 0,
    double dd1 = 0,
    double dy1 = 0,
    double d2 = 0,
    double dd2 = 0,
    double dy2 = 0
)
{
    public double D { get; } = d;
    public double DD { get; } = dd;
    public double DY { get; } = dy;
    public double D1 { get; } = d1;
    public double DD1 { get; } = dd1;
    public double DY1 { get; } = dy1;
    public double D2 { get; } = d2;
    public double DD2 { get; } = dd2;
    public double DY2 { get; } = dy2;
}
