using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A condition F + A z = T on the curve, z = exp(−κ τ), all scaled; or none.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CensoredCondition(bool IsNone, double ScaledTime, double Value)
{
    /// <summary>Below it the condition is on the floor itself.</summary>
    public const double SmallestZ = 1e-12;

    public static CensoredCondition None { get; } = new(IsNone: true, 0, 0);

    public static CensoredCondition Floor(double value) => new(IsNone: false, double.PositiveInfinity, value);

    public static CensoredCondition At(double scaledTime, double value) => new(IsNone: false, scaledTime, value);

    public double ZAt(double scaledRate) => double.IsInfinity(ScaledTime) ? 0 : Math.Exp(-scaledRate * ScaledTime);

    /// <summary>What spans the allowed points in (floor/σ, amplitude/σ, 1/σ); with a number as the floor that floor holds too.</summary>
    public CensoredPoint[] Directions(double z, double floor)
    {
        var fixedFloor = !double.IsNaN(floor);
        if (IsNone)
        {
            return fixedFloor ? [new(0, 1, 0), new(floor, 0, 1)] : [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];
        }

        if (z < SmallestZ)
        {
            // The condition is on the floor itself.
            return [new(0, 1, 0), new(fixedFloor ? Math.Max(floor, Value) : Value, 0, 1)];
        }

        return fixedFloor ? [new(floor, (Value - floor) / z, 1)] : [new(-z, 1, 0), new(Value, 0, 1)];
    }
}
