using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>Fits one series after the other, each with the intervals that its analysis would give, in the same memory.</summary>
internal sealed class DecayIntervals(ExponentialDecayOptions options, double confidence)
{
    private const int MostOnStack = 1024;

    private readonly DecayStore store = new();
    private readonly DecayFound found = new();

    public ExponentialDecay.WithIntervals Of(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        if (options.Robust)
        {
            // Its intervals are a union over the readings that may be the outlier.
            var analysis = new ExponentialDecayAnalysis(times, values, default, options);
            return new ExponentialDecay.WithIntervals(
                analysis.Fit,
                analysis.Start(confidence),
                analysis.Floor(confidence),
                analysis.Rate(confidence)
            );
        }

        var count = times.Length;
        if (!Numbers.Ascend(times))
        {
            (times, values) = store.InOrder(times, values);
        }

        if (options.Noise == DecayNoise.Constant)
        {
            var plain = DecayFitter.Fit(times, values, default, options, default, default, null, found);
            return Of(times, values, default, plain, null);
        }

        var shares = options.Noise == DecayNoise.TwoComponent ? new DecayShares() : null;
        var weights = store.Working(2 * count).AsSpan(0, count);
        var working = store.Working(2 * count).AsSpan(count, count);
        var fit = DecayFitter.Fit(times, values, default, options, weights, working, shares, found);
        return Of(times, working, weights, fit, shares);
    }

    private ExponentialDecay.WithIntervals Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in ExponentialDecay fit,
        DecayShares? shares
    )
    {
        var isTooFew = fit.Status == ExponentialDecayStatus.TooFewReadings;
        var isInDoubt =
            !isTooFew && DecayWarnings.Of(times, values, weights, fit, options, shares, store).CoverageInDoubt;
        var profile = isTooFew ? default : Profile(times, values, weights, fit);
        var (leastStart, largestStart) = isTooFew ? default : profile.UnscaledValues(0);
        var (leastFloor, largestFloor) = isTooFew ? default : profile.UnscaledValues(double.PositiveInfinity);
        var (leastRate, largestRate) = isTooFew ? default : profile.Rates(fit.Span);
        leastFloor = leastFloor is { } floor ? options.FloorOf(floor, fit.Start) : null;
        return new ExponentialDecay.WithIntervals(
            fit,
            Ends(options.Start, leastStart, largestStart),
            Ends(options.Floor, leastFloor, largestFloor),
            Ends(options.Rate, leastRate, largestRate)
        );

        Interval Ends(double? known, double? least, double? largest) =>
            known is { } value ? Interval.Fixed(value, confidence, IntervalSide.Both)
            : isTooFew ? Interval.Without(IntervalOutcome.TooFewReadings, confidence, IntervalSide.Both)
            : Interval.Between(least, largest, confidence, IntervalSide.Both, isInDoubt);
    }

    [SkipLocalsInit]
    private DecayProfile Profile(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in ExponentialDecay fit
    )
    {
        var quantile = IntervalLevel.StudentQuantile(confidence, IntervalSide.Both, fit.DegreesOfFreedom);
        var least = fit.ResidualSumOfSquares;
        var need = DecayColumns.Scratch(times.Length);
        var scratch = need <= MostOnStack ? stackalloc double[need] : new double[need];
        var columns = new DecayColumns(scratch, times, values, weights, fit.StartTime);
        return new DecayProfile(
            columns,
            new DecayShape(columns, options.Start, options.Floor, options.Bound),
            found,
            DecayProfile.Limit(least, quantile, fit.DegreesOfFreedom) - least,
            options.Rate.HasValue,
            store
        );
    }
}
