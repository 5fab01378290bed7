using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <content>The ways to read the readings, and the curves that are compatible with them.</content>
public sealed partial class ExponentialDecayAnalysis
{
    private const int MostOnStack = 1024;

    /// <summary>Residual variance of the best of several ways, by its degrees of freedom: chosen by simulation of one outlier and of none.</summary>
    private const double LeastOfSeveral = 1.5;

    private bool TryProfile(double confidence, IntervalSide side, [NotNullWhen(true)] out DecayCompatible? compatible)
    {
        compatible = profile;
        if (compatible is not null && profiledAt == (confidence, side))
        {
            return true;
        }

        var ways = Views;
        var best = Fit;
        for (var i = 0; ways.Count > 1 && i < ways.Count; i++)
        {
            best = i == 0 || ways[i].Fit.ResidualSumOfSquares < best.ResidualSumOfSquares ? ways[i].Fit : best;
        }

        var quantile = IntervalLevel.StudentQuantile(confidence, side, best.DegreesOfFreedom);
        if (Fit.Status == ExponentialDecayStatus.TooFewReadings)
        {
            return false;
        }

        // The least of several is too small on average.
        var least = best.ResidualSumOfSquares;
        least *= ways.Count > 1 && Options.Robust ? 1 + LeastOfSeveral / best.DegreesOfFreedom : 1;
        var limit = DecayProfile.Limit(least, quantile, best.DegreesOfFreedom);
        var compatibleWays = new List<(DecayView View, DecayProfile Profile)>(ways.Count);
        foreach (var way in ways)
        {
            if (way.Fit.ResidualSumOfSquares <= limit)
            {
                compatibleWays.Add((way, Profile(way, limit - way.Fit.ResidualSumOfSquares)));
            }
        }

        compatible = new DecayCompatible(compatibleWays);
        profile = compatible;
        profiledAt = (confidence, side);
        return true;
    }

    [SkipLocalsInit]
    private DecayProfile Profile(DecayView way, double excess)
    {
        var need = DecayColumns.Scratch(way.Times.Length);
        var scratch = need <= MostOnStack ? stackalloc double[need] : new double[need];
        var columns = new DecayColumns(scratch, way.Times, workingValues, way.Weights, way.Fit.StartTime);
        return new DecayProfile(
            columns,
            new DecayShape(columns, Options.Start, Options.Floor, Options.Bound),
            way.Found,
            excess,
            Options.Rate.HasValue,
            new DecayStore()
        );
    }

    /// <summary>The ways to read the readings: one; on one clock or another; or without one of them, where one may be an outlier.</summary>
    private List<DecayView> ViewsOf()
    {
        if (clocks.Count > 0 && Fit.Status != ExponentialDecayStatus.TooFewReadings)
        {
            return
            [
                .. clocks
                    .Select(clock => ViewOn(clock))
                    .Where(way => way.Fit.Status != ExponentialDecayStatus.TooFewReadings),
            ];
        }

        if (!Options.Robust || Fit.DegreesOfFreedom < 2)
        {
            return [new DecayView(times, workingWeights, Fit, found, null)];
        }

        // What is clear but for the last is left out in any case; the last, or one that is not clear, may be this reading or that.
        var clear = DecayOutliers.Find(times, values, weights, Options);
        var given = DecayOutliers.Weights(times.Length, weights);
        foreach (var outlier in clear.Take(clear.Count - 1))
        {
            given[outlier] = 0;
        }

        var all = DecayFitter.WorkingWeights(times, values, given, Options, Fit, workingValues);
        var constant = Options.With(DecayNoise.Constant);
        List<DecayView> ways = [];
        foreach (var i in DecayOutliers.Candidates(times, values, given, Fit))
        {
            var without = all.ToArray();
            without[i] = 0;
            var own = new DecayFound();
            var fit = DecayFitter.Fit(times, workingValues, without, constant, default, default, null, own);
            if (fit.Status != ExponentialDecayStatus.TooFewReadings)
            {
                ways.Add(new DecayView(times, without, fit, own, null));
            }
        }

        return ways.Count > 0 ? ways : [new DecayView(times, workingWeights, Fit, found, null)];
    }

    private DecayView ViewOn(DecayClock clock)
    {
        double[] own = [.. clock.Times];
        var its = new DecayFound();
        var constant = Options.With(DecayNoise.Constant);
        var fit = DecayFitter.Fit(own, workingValues, workingWeights, constant, default, default, null, its);
        return new DecayView(
            own,
            workingWeights,
            fit.Status == ExponentialDecayStatus.TooFewReadings ? fit : fit.WithOneMorePart(),
            its,
            clock
        );
    }
}
