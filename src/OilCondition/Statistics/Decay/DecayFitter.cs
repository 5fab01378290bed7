using System.Buffers;
using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>Least squares for given weights, and the iteration that finds weights which depend on the curve.</summary>
internal static class DecayFitter
{
    private const int MostIterations = 40;
    private const int MostOnStack = 256;

    /// <summary>Fits checked readings. Working weights and values of the last iteration are left in the spans, unless those are empty.</summary>
    /// <param name="times">Times.</param>
    /// <param name="values">Values.</param>
    /// <param name="weights">Weights, or empty for equal ones.</param>
    /// <param name="options">What is known.</param>
    /// <param name="workingWeights">For the weights, or empty.</param>
    /// <param name="workingValues">For the values, or empty.</param>
    /// <param name="shares">Keeps what the shares of a scatter of two components say of the course; null where nobody asks. Times must then be in order.</param>
    /// <param name="found">Keeps what intervals need again; null where none are asked for.</param>
    [SkipLocalsInit]
    public static ExponentialDecay Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        Span<double> workingWeights,
        Span<double> workingValues,
        DecayShares? shares = null,
        DecayFound? found = null
    )
    {
        if (options.Robust)
        {
            return Fit(
                times,
                values,
                DecayOutliers.Without(times, values, weights, options),
                options.WithoutRobust(),
                workingWeights,
                workingValues,
                shares,
                found
            );
        }

        var reweights = options.Noise != DecayNoise.Constant;
        var need = DecayColumns.Scratch(times.Length) + (reweights ? DecayReweighting.Scratch(times.Length) : 0);
        if (times.Length <= MostOnStack)
        {
            Span<double> scratch = stackalloc double[need];
            return Fit(times, values, weights, options, workingWeights, workingValues, scratch, shares, found);
        }

        var rented = ArrayPool<double>.Shared.Rent(need);
        try
        {
            var onHeap = rented.AsSpan(0, need);
            return Fit(times, values, weights, options, workingWeights, workingValues, onHeap, shares, found);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(rented);
        }
    }

    private static ExponentialDecay Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        Span<double> workingWeights,
        Span<double> workingValues,
        Span<double> scratch,
        DecayShares? shares,
        DecayFound? found
    )
    {
        var origin = options.StartTime ?? LaneMath.Smallest(times);
        var counted = Counted(times, weights, options, origin);
        if (counted == 0)
        {
            return new ExponentialDecay(ExponentialDecayStatus.TooFewReadings, options.Noise, times.Length, origin);
        }

        var columnScratch = scratch.Slice(0, DecayColumns.Scratch(times.Length));
        if (options.Noise == DecayNoise.Constant)
        {
            if (!workingWeights.IsEmpty)
            {
                values.CopyTo(workingValues);
                if (weights.IsEmpty)
                {
                    workingWeights.Fill(1);
                }
                else
                {
                    weights.CopyTo(workingWeights);
                }
            }

            return Solve(times, values, weights, options, origin, counted, columnScratch, found);
        }

        var reweighting = new DecayReweighting(
            times,
            values,
            weights,
            options.Noise,
            scratch.Slice(columnScratch.Length)
        );
        var fit =
            options.Noise == DecayNoise.TwoComponent
                ? IterateTwo(
                    times,
                    values,
                    weights,
                    reweighting,
                    options,
                    origin,
                    counted,
                    columnScratch,
                    shares,
                    found
                )
                : Iterate(times, reweighting, options, origin, counted, columnScratch, found);
        if (!workingWeights.IsEmpty)
        {
            reweighting.Weights.CopyTo(workingWeights);
            reweighting.Values.CopyTo(workingValues);
        }

        return fit;
    }

    /// <summary>The weights that a fitted curve gives all readings, and their working values.</summary>
    public static double[] WorkingWeights(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        in ExponentialDecay fit,
        Span<double> workingValues
    )
    {
        var reweighting = new DecayReweighting(
            times,
            values,
            weights,
            options.Noise,
            new double[DecayReweighting.Scratch(times.Length)]
        );
        reweighting.ProportionalShare = fit.ProportionalShare;
        reweighting.Update(DecayCurve.Of(fit));
        reweighting.Values.CopyTo(workingValues);
        return reweighting.Weights.ToArray();
    }

    private static ExponentialDecay Iterate(
        ReadOnlySpan<double> times,
        in DecayReweighting reweighting,
        ExponentialDecayOptions options,
        double origin,
        int counted,
        Span<double> scratch,
        DecayFound? found
    )
    {
        reweighting.Begin();
        var fit = Solve(times, reweighting.Values, reweighting.Weights, options, origin, counted, scratch, found);
        return Iterate(times, reweighting, options, DecayCurve.Of(fit), counted, scratch, MostIterations, found);
    }

    /// <summary>Weights from the curve and the curve from the weights, until the two agree.</summary>
    private static ExponentialDecay Iterate(
        ReadOnlySpan<double> times,
        in DecayReweighting reweighting,
        ExponentialDecayOptions options,
        DecayCurve curve,
        int counted,
        Span<double> scratch,
        int mostIterations,
        DecayFound? found
    )
    {
        for (var i = 0; ; i++)
        {
            reweighting.Update(curve);
            var origin = curve.Origin;
            var fit = Solve(times, reweighting.Values, reweighting.Weights, options, origin, counted, scratch, found);
            var next = DecayCurve.Of(fit);
            if (next.IsCloseTo(curve) || i == mostIterations)
            {
                return fit;
            }

            if (options.Noise == DecayNoise.Logarithmic)
            {
                // A full step of Gauss and Newton may go too far; half of it then does not.
                var before = reweighting.LogarithmicSumOfSquares(curve);
                for (var halving = 0; halving < 10 && reweighting.LogarithmicSumOfSquares(next) > before; halving++)
                {
                    next = next.Halfway(curve);
                }
            }

            curve = next;
        }
    }

    /// <summary>Scatter of two components: the share of each is the mean over a grid, each by how likely it makes the readings.</summary>
    private static ExponentialDecay IterateTwo(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in DecayReweighting reweighting,
        ExponentialDecayOptions options,
        double origin,
        int counted,
        Span<double> scratch,
        DecayShares? wanted,
        DecayFound? found
    )
    {
        var plain = Solve(times, values, weights, options, origin, counted, scratch, found);
        if (plain.Status == ExponentialDecayStatus.TooFewReadings)
        {
            return plain;
        }

        var curve = DecayCurve.Of(plain);
        var shares = wanted ?? new DecayShares();
        var store = DecayStore.ToWorkIn(times.Length);
        foreach (var share in DecayShares.Grid)
        {
            reweighting.ProportionalShare = share;
            var fit = Iterate(times, reweighting, options, curve, counted, scratch, DecayShares.Iterations, found);
            shares.Add(
                share,
                fit,
                DecayDesign.Of(times, reweighting.Values, reweighting.Weights, fit, options, store),
                reweighting.Weights,
                withCourse: wanted is not null
            );
        }

        reweighting.ProportionalShare = shares.Mean;
        return Iterate(times, reweighting, options, curve, counted, scratch, MostIterations, found)
            .WithParts(reweighting.ConstantPart, reweighting.PerSquare);
    }

    private static ExponentialDecay Solve(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        double origin,
        int counted,
        Span<double> scratch,
        DecayFound? found
    )
    {
        found?.LoseScan();
        var columns = new DecayColumns(scratch, times, values, weights, origin);
        if (columns.Span < DecayColumns.Least)
        {
            return new ExponentialDecay(ExponentialDecayStatus.TooFewReadings, options.Noise, times.Length, origin);
        }

        var shape = new DecayShape(columns, options.Start, options.Floor, options.Bound);
        DecayAtRate curve;
        DecaySums sums;
        var limit = 0;
        if (options.Rate.HasValue || (columns.Flat && options.FreeParts == 3))
        {
            var scaledRate = options.Rate.HasValue ? options.Rate.Value * columns.Span : DecayScan.LowestScaledRate;
            sums = columns.WithDerivatives(scaledRate);
            curve = shape.Best(sums, scaledRate);
            limit = options.Rate.HasValue ? 0 : -1;
        }
        else
        {
            curve = DecaySearch.Find(columns, shape, found, out limit, out sums);
        }

        found?.KeepOptimum(curve.ScaledRate, sums);
        var unitCovariance = DecayCovariance.Of(
            columns,
            shape,
            curve,
            sums,
            rateIsFree: !options.Rate.HasValue && limit == 0,
            out var rss,
            out _
        );
        var degreesOfFreedom = counted - options.FreeParts;
        var variance = rss / degreesOfFreedom;
        var status =
            limit < 0 ? ExponentialDecayStatus.StraightLine
            : limit > 0 ? ExponentialDecayStatus.FasterThanSampling
            : curve.Start < curve.Floor ? ExponentialDecayStatus.Rising
            : curve.AtBound ? ExponentialDecayStatus.AtFloorBound
            : ExponentialDecayStatus.Determined;
        var size = columns.Unit * columns.Unit * columns.WeightUnit;
        return new ExponentialDecay(
            status,
            options.Noise,
            counted,
            degreesOfFreedom,
            origin,
            columns.Span,
            options.Start ?? columns.Unscaled(curve.Start),
            options.Floor ?? (curve.AtBound ? options.Bound : columns.Unscaled(curve.Floor)),
            options.Rate ?? curve.ScaledRate / columns.Span,
            rss * size,
            variance * size,
            unitCovariance.Scaled(variance, columns.Unit)
        );
    }

    /// <summary>Number of readings of positive weight, or 0 if they or their times are too few for the parts to be fitted.</summary>
    private static int Counted(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        double origin
    )
    {
        var counted = weights.IsEmpty ? times.Length : 0;
        Span<double> seen = stackalloc double[3];
        var distinct = 0;
        for (var i = 0; i < times.Length && (distinct < options.FreeParts || !weights.IsEmpty); i++)
        {
            if (!weights.IsEmpty)
            {
                if (weights[i] <= 0)
                {
                    continue;
                }

                counted++;
            }

            // At the origin a curve of known start has nothing to learn.
            if (distinct < 3 && !(options.Start.HasValue && times[i] == origin))
            {
                var known = false;
                for (var j = 0; j < distinct; j++)
                {
                    known |= seen[j] == times[i];
                }

                if (!known)
                {
                    seen[distinct++] = times[i];
                }
            }
        }

        return counted > options.FreeParts && distinct >= options.FreeParts ? counted : 0;
    }
}
