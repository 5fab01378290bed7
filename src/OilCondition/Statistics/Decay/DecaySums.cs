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

    /// <summary>The sums at a rate exp(<paramref name="shift"/>) times as fast, by Taylor's series: for shifts far below 1.</summary>
    public DecaySums Shifted(double shift)
    {
        var half = shift / 2;
        return new DecaySums(
            D + shift * (D1 + half * D2),
            DD + shift * (DD1 + half * DD2),
            DY + shift * (DY1 + half * DY2),
            D1 + shift * D2,
            DD1 + shift * DD2,
            DY1 + shift * DY2,
            D2,
            DD2,
            DY2
        );
    }
}
