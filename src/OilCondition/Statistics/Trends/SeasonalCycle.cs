using MathNet.Numerics.LinearRegression;

namespace OilCondition.Statistics;

/// <summary>A cycle of known period within a series, such as that of the year: c cos(2π t/P) + s sin(2π t/P) beside a line.</summary>
internal sealed class SeasonalCycle
{
    private const double Level = 0.01;
    private const int FewestReadings = 12;

    /// <summary>Cycles, each reading standing for an interval, from which on one can be told from a trend.</summary>
    public const double CyclesNeeded = 1.95;

    private readonly double period;
    private readonly double cosine;
    private readonly double sine;

    private SeasonalCycle(double period, double cosine, double sine, double left)
    {
        Left = left;
        this.period = period;
        this.cosine = cosine;
        this.sine = sine;
    }

    /// <summary>Half the distance from its lowest to its highest.</summary>
    public double Amplitude => Math.Sqrt(cosine * cosine + sine * sine);

    public double Period => period;

    /// <summary>Residual sum of squares beside the cycle and its line.</summary>
    public double Left { get; }

    /// <summary>Looks for a cycle.</summary>
    /// <remarks>
    /// From twelve readings and two cycles on, readings standing for an interval each. F test of the pair of columns at 1 %: with two degrees of freedom
    /// above the line its probability is (RSS with / RSS without)^((n − 4)/2).
    /// </remarks>
    public static SeasonalCycle? Find(double[] times, double[] values, double? period) =>
        period is { } one
        && times.Length >= FewestReadings
        && (times[times.Length - 1] - times[0]) * times.Length / (times.Length - 1) >= CyclesNeeded * one
        && Numbers.SumOfSquaresAbout(values, values[0]) > 0
            ? Clear(times, values, one)
            : null;

    private static SeasonalCycle? Clear(double[] times, double[] values, double one)
    {
        var middle = Numbers.Mean(times);
        var centre = Numbers.Mean(values);
        double[] level = Array.ConvertAll(values, value => value - centre);
        double[][] Rows(bool withCycle) =>
            Array.ConvertAll(
                times,
                t =>
                    withCycle
                        ? new[]
                        {
                            1,
                            (t - middle) / one,
                            Math.Cos(2 * Math.PI * t / one),
                            Math.Sin(2 * Math.PI * t / one),
                        }
                        : [1, (t - middle) / one]
            );
        double Rest(double[][] rows, double[] parts) =>
            rows.Select((row, i) => level[i] - row.Zip(parts, (x, b) => x * b).Sum()).Sum(e => e * e);
        var (line, cycle) = (Rows(withCycle: false), Rows(withCycle: true));
        var parts = MultipleRegression.QR(cycle, level);
        var without = Rest(line, MultipleRegression.QR(line, level));
        var with = Rest(cycle, parts);
        return Math.Pow(with / without, (times.Length - 4) / 2.0) < Level && !IsStep(times, values, with)
            ? new SeasonalCycle(one, parts[2], parts[3], with)
            : null;
    }

    /// <summary>Whether one step explains as much: beside a line it leaves a saw's tooth that looks like a cycle.</summary>
    private static bool IsStep(double[] times, double[] values, double left)
    {
        var step = LineStep.Find(times, values);
        return step.IsTried && step.Left <= left;
    }

    /// <summary>The cycle's part at a time.</summary>
    public double At(double time)
    {
        var (cosineThen, sineThen) = Columns(time, period);
        return cosine * cosineThen + sine * sineThen;
    }

    /// <summary>A time at which it is highest, or lowest for a sign below 0.</summary>
    public double PeakAt(int sign) => period * Math.Atan2(sign * sine, sign * cosine) / (2 * Math.PI);

    /// <summary>The two columns of a cycle at a time.</summary>
    public static (double Cosine, double Sine) Columns(double time, double period)
    {
        var angle = 2 * Math.PI * time / period;
        return (Math.Cos(angle), Math.Sin(angle));
    }
}
