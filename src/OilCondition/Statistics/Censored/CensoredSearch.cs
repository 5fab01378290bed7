namespace OilCondition.Statistics;

/// <summary>The largest likelihood over the rates.</summary>
internal static class CensoredSearch
{
    private const int MostReweightings = 40;
    private const double Settled = 1e-10;

    /// <summary>A likelihood with limits is slow: half of the grid of shares does.</summary>
    private const int EveryOther = 2;

    /// <summary>Over all octaves, then by the derivative about the best of them.</summary>
    public static double Global(
        CensoredSeries series,
        CensoredLikelihood likelihood,
        ref CensoredPoint point,
        out double u,
        out bool atBound
    )
    {
        var none = CensoredCondition.None;
        if (series.Known.HasRate)
        {
            u = series.Known.LogRate;
            return likelihood.AtRate(u, none, ref point, out _, out atBound);
        }

        var best = double.NegativeInfinity;
        var bestPoint = point;
        u = DecayScan.LogLowest;
        for (var i = 0; i < series.Levels; i++)
        {
            var level = DecayScan.LogLowest + i * Math.Log(2);
            var here = likelihood.AtRate(level, none, ref point, out _, out _);
            if (here > best)
            {
                (best, u, bestPoint) = (here, level, point);
            }
        }

        point = bestPoint;
        return Local(series, likelihood, none, ref point, ref u, out atBound, 1e-11);
    }

    /// <summary>The maximum for scatter in proportion to the curve, iterated until the two agree.</summary>
    public static double Proportional(
        CensoredSeries series,
        CensoredLikelihood likelihood,
        ref CensoredPoint point,
        ref double u,
        out bool atBound
    )
    {
        for (var i = 0; ; i++)
        {
            var (before, beforePoint) = (u, point);
            series.SetProportional(point, u);
            if (i == 0)
            {
                // In units of the curve the scatter is another number altogether.
                point = new CensoredPoint(0, 0, 1 / 0.05);
            }

            var result = Local(series, likelihood, CensoredCondition.None, ref point, ref u, out atBound, 1e-11);
            if (i == MostReweightings || (Math.Abs(u - before) < Settled && point.IsCloseTo(beforePoint, Settled)))
            {
                return result;
            }
        }
    }

    /// <summary>The maximum for scatter of two components: the share of each is the mean over a grid, each by its likelihood.</summary>
    /// <returns>ln of the likelihood, and the variance over the mean one where the curve stands at f: the first and the second times f².</returns>
    public static (double LogLikelihood, double Constant, double PerSquare) TwoComponents(
        CensoredSeries series,
        CensoredLikelihood likelihood,
        ref CensoredPoint point,
        ref double u,
        out bool atBound
    )
    {
        var shares = new DecayShares();
        var (startPoint, startRate) = (point, u);
        for (var i = 0; i < DecayShares.Grid.Count; i += EveryOther)
        {
            (point, u) = (startPoint, startRate);
            double result = 0;
            for (var j = 0; j < DecayShares.Iterations; j++)
            {
                series.SetShares(DecayShares.Grid[i], point, u);
                result = Local(series, likelihood, CensoredCondition.None, ref point, ref u, out _, 1e-6);
            }

            shares.Add(DecayShares.Grid[i], 1 / (point.InverseScatter * point.InverseScatter), result);
        }

        var mean = shares.Mean;
        for (var i = 0; ; i++)
        {
            var (before, beforePoint) = (u, point);
            var (constant, perSquare) = series.SetShares(mean, point, u);
            var result = Local(series, likelihood, CensoredCondition.None, ref point, ref u, out atBound, 1e-11);
            if (i == MostReweightings || (Math.Abs(u - before) < Settled && point.IsCloseTo(beforePoint, Settled)))
            {
                return (result, constant, perSquare);
            }
        }
    }

    /// <summary>Uphill from a rate to where the derivative passes zero, or to the end of the rates that can be.</summary>
    public static double Local(
        CensoredSeries series,
        CensoredLikelihood likelihood,
        in CensoredCondition condition,
        ref CensoredPoint point,
        ref double u,
        out bool atBound,
        double tolerance
    )
    {
        var (lowest, highest) = series.Known.LogRates(condition, series);
        u = Math.Max(lowest, Math.Min(highest, u));
        var value = likelihood.AtRate(u, condition, ref point, out var slope, out atBound);
        var away = Math.Sign(slope);
        var step = 0.05;
        var (from, fromSlope) = (u, slope);
        var (to, toSlope) = (u, slope);
        while (toSlope * away > 0)
        {
            var end = away > 0 ? highest : lowest;
            if (u == end)
            {
                return value;
            }

            (from, fromSlope) = (to, toSlope);
            u = away > 0 ? Math.Min(end, from + step) : Math.Max(end, from - step);
            step *= 2;
            value = likelihood.AtRate(u, condition, ref point, out toSlope, out atBound);
            to = u;
        }

        // False position in the form of Illinois.
        for (var i = 0; i < 100 && Math.Abs(to - from) > tolerance && toSlope != 0; i++)
        {
            u = to - toSlope * (to - from) / (toSlope - fromSlope);
            if (!((u - from) * (u - to) < 0))
            {
                u = (from + to) / 2;
            }

            value = likelihood.AtRate(u, condition, ref point, out slope, out atBound);
            if (Math.Abs(u - to) < tolerance || Math.Abs(u - from) < tolerance)
            {
                return value;
            }

            if (slope * toSlope < 0)
            {
                (from, fromSlope) = (to, toSlope);
            }
            else
            {
                fromSlope /= 2;
            }

            (to, toSlope) = (u, slope);
        }

        return value;
    }
}
