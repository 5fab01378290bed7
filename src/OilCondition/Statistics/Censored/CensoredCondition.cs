using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A condition F + A z = T on the curve, z = exp(−κ τ), all scaled; or none.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CensoredCondition(bool IsNone, double ScaledTime, double Value)
{
    /// <summary>Below it the condition is on the floor itself.</summary>
    public const double SmallestZ = 1e-12;

    /// <summary>Its reciprocal and the square of that are still numbers.</summary>
    private const double SmallestPower = 1e-100;

    public static CensoredCondition None { get; } = new(IsNone: true, 0, 0);

    public static CensoredCondition Floor(double value) => new(IsNone: false, double.PositiveInfinity, value);

    public static CensoredCondition At(double scaledTime, double value) => new(IsNone: false, scaledTime, value);

    public double ZAt(double scaledRate) => double.IsInfinity(ScaledTime) ? 0 : Math.Exp(-scaledRate * ScaledTime);

    /// <summary>What spans the allowed points in (floor/σ, amplitude/σ, 1/σ), where known parts hold too.</summary>
    /// <param name="z">exp(−κ τ) at the time of the condition.</param>
    /// <param name="floor">Floor that holds, or NaN.</param>
    /// <param name="start">Start that holds, or NaN.</param>
    public CensoredPoint[] Directions(double z, double floor, double start)
    {
        var fixedFloor = !double.IsNaN(floor);
        if (!double.IsNaN(start))
        {
            // Floor and start together leave the scatter only: a condition then chooses the rate.
            return fixedFloor ? [new(floor, start - floor, 1)]
                : IsNone ? [new(1, -1, 0), new(0, start, 1)]
                : [new((Value - start * z) / (1 - z), (start - Value) / (1 - z), 1)];
        }

        if (IsNone)
        {
            return fixedFloor ? [new(0, 1, 0), new(floor, 0, 1)] : [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];
        }

        if (double.IsInfinity(ScaledTime) || (z < SmallestZ && !fixedFloor))
        {
            // The condition is on the floor itself.
            return [new(0, 1, 0), new(fixedFloor ? Math.Max(floor, Value) : Value, 0, 1)];
        }

        return fixedFloor
            ? [new(floor, (Value - floor) / Math.Max(z, SmallestPower), 1)]
            : [new(-z, 1, 0), new(Value, 0, 1)];
    }
}
