namespace OilCondition.Statistics;

/// <summary>Finds readings that do not belong to the curve of the others: by leaving each out in turn.</summary>
/// <remarks>
/// The mean-shift model (Cook and Weisberg 1982, section 2.2, from memory): without reading i the sum of squares falls to RSS_i, and
/// t² = (RSS − RSS_i)/(RSS_i/(ν − 1)) has Fisher's F(1, ν − 1) where it is none; the largest of n by Bonferroni. A reading far outside draws the
/// curve towards itself, so that its own residual says little; the fit without it is not drawn. Several are taken out one after the other, and as
/// many count as the last step that is clear (generalised extreme deviate, Rosner 1983, from memory).
/// </remarks>
internal static class DecayOutliers
{
    /// <summary>Series without an outlier in which one is found.</summary>
    private const double OneInTwenty = 0.05;

    private const int ReadingsAnOutlier = 6;
    private const int Most = 5;

    /// <summary>With more readings only those farthest from the curve are left out in turn, and the first and last few, which hold it.</summary>
    private const int AllUpTo = 24;
    private const int Farthest = 12;
    private const int AtEnds = 2;

    /// <summary>After three time constants 5 % of a fall are left.</summary>
    private const double SpentAfter = 3;

    /// <summary>A curve is not taken as closer to zero than this part of its start.</summary>
    private const double SmallestShare = 1e-3;

    /// <summary>The weights with 0 for each outlier.</summary>
    public static double[] Without(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options
    )
    {
        var left = Weights(times.Length, weights);
        foreach (var outlier in Find(times, values, weights, options))
        {
            left[outlier] = 0;
        }

        return left;
    }

    /// <summary>Positions of the outliers, the clearest first.</summary>
    public static IReadOnlyList<int> Find(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options
    )
    {
        var left = Weights(times.Length, weights);
        var plain = options.WithoutRobust();
        var counted = left.Count(weight => weight > 0);
        var most = MostOf(counted);
        List<int> taken = [];
        var clear = 0;
        while (taken.Count < most && counted - taken.Count >= plain.FreeParts + 2)
        {
            var (farthest, chance) = Next(times, values, left, plain);
            if (farthest < 0)
            {
                break;
            }

            left[farthest] = 0;
            taken.Add(farthest);
            if (chance * (counted - taken.Count + 1) < OneInTwenty)
            {
                clear = taken.Count;
            }
        }

        return taken.GetRange(0, clear);
    }

    /// <summary>The most that are looked for among as many readings.</summary>
    public static int MostOf(int counted) => Math.Min(Most, Math.Max(1, counted / ReadingsAnOutlier));

    /// <summary>The weights as given, or equal ones.</summary>
    public static double[] Weights(int count, ReadOnlySpan<double> weights)
    {
        var left = new double[count];
        if (weights.IsEmpty)
        {
            left.AsSpan().Fill(1);
        }
        else
        {
            weights.CopyTo(left);
        }

        return left;
    }

    /// <summary>The reading that scatter explains least, and the chance that it does; −1 where none can be left out.</summary>
    private static (int At, double Chance) Next(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double[] weights,
        ExponentialDecayOptions options
    )
    {
        // Where it is not known how the scatter goes, an outlier is one either way.
        ExponentialDecayOptions[] ways =
            options.Noise == DecayNoise.TwoComponent
                ? [options.With(DecayNoise.Constant), options.With(DecayNoise.Proportional)]
                : [options];
        var whole = DecayFitter.Fit(times, values, weights, ways[0], default, default);
        var (found, least) = (-1, double.PositiveInfinity);
        foreach (var i in Candidates(times, values, weights, whole))
        {
            double chance = 0;
            foreach (var way in ways)
            {
                chance = Math.Max(chance, ChanceOf(i, times, values, weights, whole, way));
            }

            (found, least) = chance < least ? (i, chance) : (found, least);
        }

        return (found, least);
    }

    /// <summary>The chance that scatter puts one reading so far from the curve of the others; 1 where that cannot be told.</summary>
    private static double ChanceOf(
        int at,
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double[] weights,
        in ExponentialDecay whole,
        ExponentialDecayOptions options
    )
    {
        var weight = weights[at];
        weights[at] = 0;
        var without = DecayFitter.Fit(times, values, weights, options, default, default);
        weights[at] = weight;
        if (without.Status == ExponentialDecayStatus.TooFewReadings || without.DegreesOfFreedom < 1)
        {
            return 1;
        }

        var with =
            options.Noise == DecayNoise.Proportional
                ? SquaresWith(times, values, weights, without, options)
                : whole.ResidualSumOfSquares;
        var own = Math.Max(without.ResidualSumOfSquares, 1e-20 * with);
        var t = Math.Sqrt(Math.Max(0, with - own) / (own / without.DegreesOfFreedom));
        if (whole.Rate * (FirstBut(at, times, weights) - times[at]) > SpentAfter && IsClear(without))
        {
            // A curve that is spent before the second reading takes the first however far it lies. Where the others fall by themselves, theirs is it.
            var beyond = without.StandardErrorAt(times[at], BandKind.NewReading);
            t = Math.Max(t, beyond > 0 ? Math.Abs(values[at] - without.ValueAt(times[at])) / beyond : 0);
        }

        return StudentDistribution.TwoSidedTail(t, without.DegreesOfFreedom);
    }

    private static double FirstBut(int at, ReadOnlySpan<double> times, double[] weights)
    {
        var first = double.PositiveInfinity;
        for (var i = 0; i < times.Length; i++)
        {
            first = i != at && weights[i] > 0 ? Math.Min(first, times[i]) : first;
        }

        return first;
    }

    /// <summary>Whether readings show a fall, and its rate to a half.</summary>
    private static bool IsClear(in ExponentialDecay fit) =>
        fit.Status is ExponentialDecayStatus.Determined or ExponentialDecayStatus.AtFloorBound
        && fit.HasRateError
        && fit.RateStandardError < fit.Rate / 2;

    /// <summary>The sum of squares of all readings, each with the scatter in proportion to the curve without the one.</summary>
    private static double SquaresWith(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double[] weights,
        in ExponentialDecay without,
        ExponentialDecayOptions options
    )
    {
        var fixedWeights = new double[times.Length];
        for (var i = 0; i < fixedWeights.Length; i++)
        {
            var size = Math.Max(without.ValueAt(times[i]), SmallestShare * Math.Abs(without.Start));
            fixedWeights[i] = size > 0 ? weights[i] / (size * size) : 0;
        }

        return DecayFitter
            .Fit(times, values, fixedWeights, options.With(DecayNoise.Constant), default, default)
            .ResidualSumOfSquares;
    }

    /// <summary>The readings that are left out in turn.</summary>
    public static IEnumerable<int> Candidates(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double[] weights,
        in ExponentialDecay fit
    )
    {
        var counted = Enumerable.Range(0, weights.Length).Where(i => weights[i] > 0).ToList();
        if (counted.Count <= AllUpTo || fit.Status == ExponentialDecayStatus.TooFewReadings)
        {
            return counted;
        }

        var distances = new double[weights.Length];
        var at = times.ToArray();
        for (var i = 0; i < distances.Length; i++)
        {
            var value = fit.ValueAt(times[i]);
            var scatter = fit.ScatterAt(value);
            distances[i] = scatter > 0 ? Math.Abs(values[i] - value) / scatter : 0;
        }

        var inOrder = counted.OrderBy(i => at[i]).ToList();
        return counted
            .OrderByDescending(i => distances[i])
            .Take(Farthest)
            .Concat(inOrder.Take(AtEnds))
            .Concat(inOrder.Skip(inOrder.Count - AtEnds))
            .Distinct();
    }
}
