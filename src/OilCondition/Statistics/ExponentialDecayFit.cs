using System.Runtime.InteropServices;
using OilCondition.Guards;

namespace OilCondition.Statistics;

/// <summary>An exponential approach to a floor, y(t) = floor + (start − floor) exp(−rate (t − first time)), with its doubt.</summary>
/// <remarks>The start is the value at the time of the first reading. The time unit is the caller's; the rate is per that unit.</remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ExponentialDecayFit
{
    internal ExponentialDecayFit(
        ExponentialDecayStatus status,
        int count,
        double firstTime,
        double span,
        double start,
        double floor,
        double rate,
        double residualSumOfSquares
    )
    {
        Status = status;
        Count = count;
        FirstTime = firstTime;
        Span = span;
        Start = start;
        Floor = floor;
        Rate = rate;
        ResidualSumOfSquares = residualSumOfSquares;
    }

    /// <summary>What the fit could tell. With <see cref="ExponentialDecayStatus.TooFewReadings"/> the other numbers are 0.</summary>
    public ExponentialDecayStatus Status { get; }

    /// <summary>Number of readings, n.</summary>
    public int Count { get; }

    /// <summary>Time of the first reading.</summary>
    public double FirstTime { get; }

    /// <summary>Time from the first reading to the last.</summary>
    public double Span { get; }

    /// <summary>Value at the time of the first reading, c_0.</summary>
    public double Start { get; }

    /// <summary>Value approached, c_inf.</summary>
    public double Floor { get; }

    /// <summary>Rate, k, per unit of time.</summary>
    public double Rate { get; }

    /// <summary>Sum of squared residuals.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Standard deviation of the readings about the curve, sqrt(RSS / (n − 3)); 0 with three readings or fewer.</summary>
    public double ResidualStandardDeviation => Count > 3 ? Math.Sqrt(ResidualSumOfSquares / (Count - 3)) : 0;

    /// <summary>How many time constants the readings span, k (t_n − t_1). Below about two the floor is hardly known.</summary>
    public double ObservedTimeConstants => Rate * Span;

    /// <summary>The curve at a time.</summary>
    /// <param name="time">Time, in the unit and from the origin of the readings.</param>
    /// <returns>The value.</returns>
    public double ValueAt(double time) =>
        Floor + (Start - Floor) * Math.Exp(-Rate * (Guard.Finite(time, "", nameof(time)) - FirstTime));
}
