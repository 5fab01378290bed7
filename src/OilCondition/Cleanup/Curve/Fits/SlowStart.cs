using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Finds how many of the first readings of a run belong to no exponential, from the shape alone.</summary>
/// <remarks>
/// Compared are one exponential for all readings, and a straight line for the first m with an exponential for the rest, by
/// n ln(RSS/(n − p)) + p ln n with p = 3 and 6 (Schwarz 1978, with the unbiased variance for small n; line and place of the break count as
/// three parts). The second must win by more than ten, 'very strong' after Kass and Raftery 1995 (both from memory); it must beat one
/// exponential with one outlier (p = 5) as well; and the first reading must lie below the exponential of the rest, carried back to it, by a
/// twentieth of the fall or more: oil that warms up, and free water that leaves at the rate that heat and pump allow (the constant-rate
/// period of drying), both fall slower than the exponential that follows.
/// </remarks>
internal static class SlowStart
{
    /// <summary>Two readings always lie on a line.</summary>
    private const int FewestOnLine = 3;

    private const double ClearEvidence = 10;
    private const double ShareOfFall = 0.05;
    private const int MostBreaks = 60;
    private const int OutliersTried = 3;

    /// <summary>Number of readings of the slow start, 0 if there is none.</summary>
    /// <remarks>
    /// A scatter of two components, told with the break in the readings, would take the break for scatter: the shape is asked at a constant one.
    /// </remarks>
    public static int Count(double[] hours, double[] values, ExponentialDecayOptions stated)
    {
        var noise = stated.Noise == DecayNoise.TwoComponent ? DecayNoise.Constant : stated.Noise;
        var n = hours.Length;
        var options = new ExponentialDecayOptions(noise, floor: stated.Floor, rate: stated.Rate);
        var parts = options.FreeParts;
        var fewestOnCurve = parts + 2;
        var mean = n == 0 ? 0 : values.Average();
        if (n < FewestOnLine + fewestOnCurve || !values.All(value => value > 0 || noise == DecayNoise.Constant))
        {
            return 0;
        }

        var whole = ExponentialDecay.Fit(hours, values, options);
        var total = values.Sum(value => Square((value - mean) * Weight(value, noise)));
        if (whole.Status == ExponentialDecayStatus.TooFewReadings || !(whole.ResidualSumOfSquares > 1e-12 * total))
        {
            return 0;
        }

        var best = Math.Min(
            Score(whole.ResidualSumOfSquares, n, parts) - ClearEvidence,
            ScoreWithOutlier(hours, values, options, whole)
        );
        var found = 0;
        var step = Math.Max(1, (n - fewestOnCurve - FewestOnLine) / MostBreaks);
        for (var m = FewestOnLine; m <= n - fewestOnCurve; m += step)
        {
            var rest = ExponentialDecay.Fit(hours.AsSpan(m), values.AsSpan(m), options);
            if (
                rest.Status is not (ExponentialDecayStatus.Determined or ExponentialDecayStatus.AtFloorBound)
                || !(rest.Start > rest.Floor)
                || rest.Rate * (hours[m] - hours[0]) > 100
            )
            {
                continue;
            }

            var line = Line(hours, values, m, noise, out var atFirst);
            var fall = values.Take(m).Max() - values.Skip(m).Min();
            var score = Score(rest.ResidualSumOfSquares + line, n, parts + 3);
            if (score < best && rest.ValueAt(hours[0]) - atFirst > ShareOfFall * fall)
            {
                best = score;
                found = m;
            }
        }

        return found;
    }

    private static double Score(double residualSumOfSquares, int n, int parts) =>
        n * Math.Log(Math.Max(residualSumOfSquares, double.Epsilon) / (n - parts)) + parts * Math.Log(n);

    /// <summary>The best score of one exponential without one of the readings that lie farthest from it.</summary>
    private static double ScoreWithOutlier(
        double[] hours,
        double[] values,
        ExponentialDecayOptions options,
        ExponentialDecay whole
    ) =>
        Enumerable
            .Range(0, hours.Length)
            .OrderByDescending(i => Math.Abs(values[i] - whole.ValueAt(hours[i])) * Weight(values[i], options.Noise))
            .Take(OutliersTried)
            .Min(without =>
                Score(
                    ExponentialDecay
                        .Fit(
                            hours.Where((_, i) => i != without).ToArray(),
                            values.Where((_, i) => i != without).ToArray(),
                            options
                        )
                        .ResidualSumOfSquares,
                    hours.Length,
                    options.FreeParts + 2
                )
            );

    /// <summary>Residual sum of squares of the line through the first readings, and its value at the first.</summary>
    private static double Line(double[] hours, double[] values, int m, DecayNoise noise, out double atFirst)
    {
        double w = 0;
        double x = 0;
        double y = 0;
        for (var i = 0; i < m; i++)
        {
            var weight = Square(Weight(values[i], noise));
            w += weight;
            x += weight * hours[i];
            y += weight * values[i];
        }

        x /= w;
        y /= w;
        double xx = 0;
        double xy = 0;
        for (var i = 0; i < m; i++)
        {
            var weight = Square(Weight(values[i], noise));
            xx += weight * Square(hours[i] - x);
            xy += weight * (hours[i] - x) * (values[i] - y);
        }

        var slope = xx > 0 ? xy / xx : 0;
        atFirst = y + slope * (hours[0] - x);
        double squares = 0;
        for (var i = 0; i < m; i++)
        {
            squares += Square((values[i] - y - slope * (hours[i] - x)) * Weight(values[i], noise));
        }

        return squares;
    }

    /// <summary>To first order the residual of the logarithm is that in proportion to the reading.</summary>
    private static double Weight(double value, DecayNoise noise) => noise == DecayNoise.Constant ? 1 : 1 / value;

    private static double Square(double value) => value * value;
}
