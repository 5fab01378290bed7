using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>A quantity that approaches a long-run level at a rate in proportion to its distance from it.</summary>
/// <remarks>
/// x(t) = x∞ + (x0 − x∞) exp(−r t). Depletion with make-up, dA/dt = −k A + m (A0 − A): r = k + m, x∞ = A0 m / (k + m), <see cref="WithMakeUp"/>.
/// Time to a value L: ln((x0 − x∞)/(L − x∞)) / r, which exists only for L between x0 and x∞. Source: closed form of the mass balance of a
/// well-mixed charge (derived; common practice).
/// </remarks>
/// <example>
/// <code>
/// var additive = FirstOrderCourse.WithMakeUp(100, 100, lossRate: 0.03, makeUpRate: 0.012); // % and per month
/// var end = additive.TimeTo(25);                                                       // Never: it levels off at 28.6 %
/// </code>
/// </example>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FirstOrderCourse
{
    /// <summary>A course.</summary>
    /// <param name="start">Value at time 0, x0.</param>
    /// <param name="longRun">Value that is approached, x∞.</param>
    /// <param name="rate">Rate r, per time; 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the rate is below 0.</exception>
    public FirstOrderCourse(double start, double longRun, double rate)
    {
        Start = Guard.Finite(start, "");
        LongRun = Guard.Finite(longRun, "");
        Rate = Guard.NotNegative(rate, "");
    }

    /// <summary>Value at time 0, x0.</summary>
    public double Start { get; }

    /// <summary>Value that is approached, x∞.</summary>
    public double LongRun { get; }

    /// <summary>Rate, r, per time.</summary>
    public double Rate { get; }

    /// <summary>A substance that is used up while make-up brings new.</summary>
    /// <param name="start">Value at time 0.</param>
    /// <param name="newValue">Value of the make-up, A0; 0 or more.</param>
    /// <param name="lossRate">Rate of loss, k, per time; 0 or more.</param>
    /// <param name="makeUpRate">Make-up per time as a fraction of the charge, m; 0 or more.</param>
    /// <returns>The course.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static FirstOrderCourse WithMakeUp(double start, double newValue, double lossRate, double makeUpRate)
    {
        Guard.NotNegative(newValue, "");
        var rate = Guard.NotNegative(lossRate, "") + Guard.NotNegative(makeUpRate, "");
        return new FirstOrderCourse(start, rate > 0 ? newValue * (makeUpRate / rate) : start, rate);
    }

    /// <summary>The value at a time.</summary>
    /// <param name="time">Time from the start, 0 or more.</param>
    /// <returns>x.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or below 0.</exception>
    public double ValueAt(double time) => LongRun + (Start - LongRun) * Math.Exp(-Rate * Guard.NotNegative(time, ""));

    /// <summary>When a value is reached.</summary>
    /// <param name="target">The value.</param>
    /// <returns>The time from the start, or that it is reached already or never.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public Arrival<double> TimeTo(double target)
    {
        Guard.Finite(target, "");
        var gone = Start - target;
        var left = target - LongRun;
        if (gone == 0 || (Start - LongRun) * gone < 0)
        {
            return new Arrival<double>.Already(0);
        }

        var time = gone * left > 0 && Rate > 0 ? Math.Log(1 + gone / left) / Rate : double.PositiveInfinity;
        return Guard.IsFinite(time) ? new Arrival<double>.Expected(time) : new Arrival<double>.Never();
    }
}
