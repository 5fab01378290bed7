using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>An exponential approach to a floor, y(t) = floor + (start − floor) exp(−rate (t − start time)), with its uncertainty.</summary>
/// <remarks>
/// Times, values and the rate are in the caller's units. Standard errors are of the delta method, s² (J'WJ)⁻¹: right for the bands
/// of the curve, but too narrow for floor and time to a value below about two time constants, where
/// <see cref="ExponentialDecayAnalysis"/> gives profile intervals.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
public readonly partial record struct ExponentialDecay
{
    private readonly DecayCovariance covariance;
    private readonly double constantPart;
    private readonly double perSquare;

    internal ExponentialDecay(ExponentialDecayStatus status, DecayNoise noise, int count, double startTime)
    {
        Status = status;
        Noise = noise;
        Count = count;
        StartTime = startTime;
    }

    internal ExponentialDecay(
        ExponentialDecayStatus status,
        DecayNoise noise,
        int count,
        int degreesOfFreedom,
        double startTime,
        double span,
        double start,
        double floor,
        double rate,
        double residualSumOfSquares,
        double variance,
        in DecayCovariance covariance
    )
    {
        Status = status;
        Noise = noise;
        Count = count;
        DegreesOfFreedom = degreesOfFreedom;
        StartTime = startTime;
        Span = span;
        Start = start;
        Floor = floor;
        Rate = rate;
        ResidualSumOfSquares = residualSumOfSquares;
        ResidualStandardDeviation = Math.Sqrt(variance);
        this.covariance = covariance;
    }

    private ExponentialDecay(in ExponentialDecay other, double constant, double perSquare)
    {
        this = other;
        constantPart = constant;
        this.perSquare = perSquare;
    }

    /// <summary>What the fit could tell. With <see cref="ExponentialDecayStatus.TooFewReadings"/> the other numbers are 0.</summary>
    public ExponentialDecayStatus Status { get; }

    /// <summary>How the scatter was taken to go with the value.</summary>
    public DecayNoise Noise { get; }

    /// <summary>Number of readings that count, n.</summary>
    public int Count { get; }

    /// <summary>Readings less fitted parts.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Time at which the curve has its start: that of the first reading, or the one given with a known start.</summary>
    public double StartTime { get; }

    /// <summary>Time from the start to the last reading.</summary>
    public double Span { get; }

    /// <summary>Value at the start time, c_0.</summary>
    public double Start { get; }

    /// <summary>Value approached, c_inf.</summary>
    public double Floor { get; }

    /// <summary>Rate, k, per unit of time.</summary>
    public double Rate { get; }

    /// <summary>Weighted sum of squared residuals; of their logarithms with logarithmic noise.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>
    /// Scatter of the readings about the curve: in the unit of the values with constant noise, as a fraction of the value with
    /// proportional noise, in ln units with logarithmic noise; with two components the root mean square over the readings, in the unit of the
    /// values. sqrt(RSS / degrees of freedom).
    /// </summary>
    public double ResidualStandardDeviation { get; }

    /// <summary>How many time constants the readings span, k times the span. Below about two the floor is hardly known.</summary>
    public double ObservedTimeConstants => Rate * Span;

    /// <summary>ln 2 / k; 0 where no curve was fitted.</summary>
    public double HalfLife => Rate > 0 ? Math.Log(2) / Rate : 0;

    /// <summary>Whether the readings have a say in the rate: false where it is known, at a limit of the search, or nothing falls.</summary>
    public bool HasRateError => covariance.LogRate > 0;

    /// <summary>Standard error of the start; 0 where it is known.</summary>
    public double StartStandardError => Math.Sqrt(covariance.Start);

    /// <summary>Standard error of the floor; 0 where it is known or at its bound.</summary>
    public double FloorStandardError => Math.Sqrt(covariance.Floor);

    /// <summary>Standard error of the rate; 0 without <see cref="HasRateError"/>.</summary>
    public double RateStandardError => Rate * Math.Sqrt(covariance.LogRate);

    /// <summary>Correlation of the errors of floor and rate.</summary>
    public double FloorRateCorrelation => Correlation(covariance.FloorLogRate, covariance.Floor, covariance.LogRate);

    /// <inheritdoc/>
    public override string ToString()
    {
        if (Status is ExponentialDecayStatus.TooFewReadings or ExponentialDecayStatus.TooFewAboveLimit)
        {
            return $"{PlainText.Spaced(Status)}: {Count}";
        }

        var remark = Status == ExponentialDecayStatus.Determined ? "" : $" ({PlainText.Spaced(Status)})";
        return $"{PlainText.Number(Start, StartStandardError)} to {PlainText.Number(Floor, FloorStandardError)} "
            + $"at {PlainText.Number(Rate, RateStandardError)} per unit of time{remark}, {Count} readings";
    }

    /// <summary>The curve at a time.</summary>
    /// <param name="time">Time, in the unit and from the zero of the readings; before the start the curve is extended backwards.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite, or so early that the curve passes all bounds.</exception>
    public double ValueAt(double time) => Floor + (Start - Floor) * Remaining(time);

    /// <summary>Standard error of the curve, or of a new reading, at a time (delta method).</summary>
    /// <remarks>With logarithmic noise the error of the logarithm times the value.</remarks>
    /// <param name="time">Time.</param>
    /// <param name="of">The curve itself or one new reading (of weight 1).</param>
    /// <returns>The standard error, in the unit of the values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite, or so early that the curve passes all bounds.</exception>
    public double StandardErrorAt(double time, BandKind of)
    {
        var (e, d, u) = Gradient(time);
        var variance = covariance.VarianceOf(e, d, u);
        if (of == BandKind.NewReading)
        {
            var scatter = ScatterAt(ValueAt(time));
            variance += scatter * scatter;
        }

        return Math.Sqrt(Math.Max(0, variance));
    }

    /// <summary>Standard deviation of one reading (of weight 1) where the curve stands at a value.</summary>
    /// <param name="value">The value; with logarithmic noise the error of the logarithm times it.</param>
    /// <returns>The standard deviation, in the unit of the values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public double ScatterAt(double value)
    {
        Guard.Finite(value, "");
        return ResidualStandardDeviation
            * Noise switch
            {
                DecayNoise.Constant => 1,
                DecayNoise.TwoComponent => Math.Sqrt(constantPart + perSquare * value * value),
                _ => Math.Abs(value),
            };
    }

    /// <summary>Correlation of the error of the curve at a time with that of the floor; at the start time, of start and floor.</summary>
    /// <param name="time">Time.</param>
    /// <returns>−1 to 1, 0 where one of them is known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite, or so early that the curve passes all bounds.</exception>
    public double FloorCorrelationAt(double time)
    {
        var (e, d, u) = Gradient(time);
        var common = e * covariance.StartFloor + d * covariance.Floor + u * covariance.FloorLogRate;
        return Correlation(common, covariance.VarianceOf(e, d, u), covariance.Floor);
    }

    /// <summary>Correlation of the error of the curve at a time with that of the rate; at the start time, of start and rate.</summary>
    /// <param name="time">Time.</param>
    /// <returns>−1 to 1, 0 where one of them is known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite, or so early that the curve passes all bounds.</exception>
    public double RateCorrelationAt(double time)
    {
        var (e, d, u) = Gradient(time);
        var common = e * covariance.StartLogRate + d * covariance.FloorLogRate + u * covariance.LogRate;
        return Correlation(common, covariance.VarianceOf(e, d, u), covariance.LogRate);
    }

    /// <summary>Band about the curve at a time, for the curve itself or for one new reading (delta method, Student's t).</summary>
    /// <remarks>With constant noise it may reach below zero and is not clipped; with logarithmic noise it is symmetric in ln y.</remarks>
    /// <param name="time">Time.</param>
    /// <param name="of">The curve itself (confidence band) or one new reading (prediction band).</param>
    /// <param name="confidence">Confidence level, above 0 and below 1.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The band.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite, or so early that the curve passes all bounds.</exception>
    public Interval BandAt(double time, BandKind of, double confidence, IntervalSide side = IntervalSide.Both)
    {
        var quantile = IntervalLevel.StudentQuantile(confidence, side, DegreesOfFreedom);
        if (Status == ExponentialDecayStatus.TooFewReadings)
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        var value = ValueAt(time);
        var half = quantile * StandardErrorAt(time, of);
        if (Noise == DecayNoise.Logarithmic && value > 0)
        {
            var factor = Math.Exp(Math.Min(half / value, 500));
            return Interval.Between(value / factor, value * factor, confidence, side, coverageInDoubt: false);
        }

        return Interval.Between(value - half, value + half, confidence, side, coverageInDoubt: false);
    }

    /// <summary>When the curve reaches a value, if it does so after the start.</summary>
    /// <param name="target">The value.</param>
    /// <param name="time">The time, or 0.</param>
    /// <returns>Whether the target lies strictly between start and floor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target is not finite.</exception>
    public bool TryTimeTo(double target, out double time)
    {
        Guard.Finite(target, "");
        var fraction = Start == Floor ? 0 : (target - Floor) / (Start - Floor);
        var reaches = Rate > 0 && fraction > 0 && fraction < 1;
        time = reaches ? StartTime - Math.Log(fraction) / Rate : 0;
        return reaches;
    }

    /// <summary>Standard error of the time at which the curve reaches a value, by the delta method.</summary>
    /// <remarks>For display beside other software; intervals of this form cover far too seldom below two time constants.</remarks>
    /// <param name="target">The value.</param>
    /// <param name="standardError">The standard error, or 0.</param>
    /// <returns>Whether the curve reaches the value and the readings have a say in the rate.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target is not finite.</exception>
    public bool TryStandardErrorOfTimeTo(double target, out double standardError)
    {
        standardError = 0;
        if (!TryTimeTo(target, out var time) || !HasRateError)
        {
            return false;
        }

        // The curve's error at that time over its slope there: dt = dy / (k (target − floor)).
        standardError = StandardErrorAt(time, BandKind.Mean) / Math.Abs(Rate * (target - Floor));
        return Guard.IsFinite(standardError);
    }

    /// <summary>Covariance of start, floor and ln k.</summary>
    internal DecayCovariance Covariance => covariance;

    /// <summary>Share of the proportional part in the mean variance of two components.</summary>
    internal double ProportionalShare => 1 - constantPart;

    /// <summary>The same where one more part was fitted, which is no part of the curve.</summary>
    internal ExponentialDecay WithOneMorePart()
    {
        var degrees = DegreesOfFreedom - 1;
        var more = (double)DegreesOfFreedom / degrees;
        return new ExponentialDecay(
            Status,
            Noise,
            Count,
            degrees,
            StartTime,
            Span,
            Start,
            Floor,
            Rate,
            ResidualSumOfSquares,
            ResidualStandardDeviation * ResidualStandardDeviation * more,
            covariance.Scaled(more, 1)
        ).WithParts(constantPart, perSquare);
    }

    /// <summary>The same with the parts of a scatter of two components.</summary>
    internal ExponentialDecay WithParts(double constant, double perSquare) => new(this, constant, perSquare);

    private static double Correlation(double covariance, double first, double second) =>
        first > 0 && second > 0 ? Math.Max(-1, Math.Min(1, covariance / Math.Sqrt(first * second))) : 0;

    /// <summary>Derivatives of the curve by start, floor and ln k.</summary>
    private (double Start, double Floor, double LogRate) Gradient(double time)
    {
        var e = Remaining(time);
        return (e, 1 - e, (Floor - Start) * Rate * (time - StartTime) * e);
    }

    private double Remaining(double time)
    {
        Guard.Finite(time, "");
        var exponent = -Rate * (time - StartTime);
        return exponent <= 200
            ? Math.Exp(exponent)
            : throw new ArgumentOutOfRangeException(
                nameof(time),
                $"time is {time:G7}, more than 200 time constants before the start; allowed: later."
            );
    }
}
