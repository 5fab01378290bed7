using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A decay curve in the caller's units, nothing but its parts.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DecayCurve(double Start, double Floor, double Rate, double Origin)
{
    public static DecayCurve Of(in ExponentialDecay fit) => new(fit.Start, fit.Floor, fit.Rate, fit.StartTime);

    public double At(double time) => Floor + (Start - Floor) * Math.Exp(-Rate * (time - Origin));

    /// <summary>Halfway to another curve, the rate on its log scale.</summary>
    public DecayCurve Halfway(in DecayCurve other) =>
        new((Start + other.Start) / 2, (Floor + other.Floor) / 2, Math.Sqrt(Rate * other.Rate), Origin);

    public bool IsCloseTo(in DecayCurve other)
    {
        var size = 1e-9 * (Math.Abs(Start) + Math.Abs(Floor));
        return Math.Abs(other.Rate - Rate) <= 1e-9 * Rate
            && Math.Abs(other.Start - Start) <= size
            && Math.Abs(other.Floor - Floor) <= size;
    }
}
