using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>First-order loss at one rate: the start that fits best, its standard error, and how well the readings speak for the rate.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LossAtRate(
    double LossRate,
    double MakeUpRate,
    double LongRun,
    double Start,
    double StartStandardError,
    int DegreesOfFreedom,
    double LogWeight,
    double Weight
)
{
    public static LossAtRate Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double newValue,
        double makeUpRate,
        double lossRate
    )
    {
        var rate = lossRate + makeUpRate;
        var longRun = rate > 0 ? newValue * (makeUpRate / rate) : 0;
        double ee = 0;
        double ey = 0;
        double size = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var e = Math.Exp(-rate * (times[i] - times[0]));
            ee += e * e;
            ey += e * (values[i] - longRun * (1 - e));
            size += values[i] * values[i];
        }

        var start = ey / ee;

        // The floor stands for readings without any scatter.
        var squares = 1e-18 * size + 1e-290;
        for (var i = 0; i < times.Length; i++)
        {
            var e = Math.Exp(-rate * (times[i] - times[0]));
            var off = values[i] - longRun - (start - longRun) * e;
            squares += off * off;
        }

        var freedom = times.Length - 1;
        return new LossAtRate(
            lossRate,
            makeUpRate,
            longRun,
            start,
            Math.Sqrt(squares / freedom / ee),
            freedom,
            -0.5 * (Math.Log(ee) + freedom * Math.Log(squares)),
            0
        );
    }

    public LossAtRate Weighted(double weight) => this with { Weight = weight };

    /// <summary>The chance that the value lies below a limit at a time after the first reading.</summary>
    public double ChanceBelow(double limit, double elapsed)
    {
        var left = Math.Exp(-(LossRate + MakeUpRate) * elapsed);
        var gap = limit - LongRun - (Start - LongRun) * left;
        var error = StartStandardError * left;
        if (error > 0)
        {
            return StudentDistribution.Below(gap / error, DegreesOfFreedom);
        }

        return gap > 0 ? 1 : 0;
    }
}
