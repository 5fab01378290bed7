using System.Buffers;
using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>Least squares for given weights, and the iteration that finds weights which depend on the curve.</summary>
internal static class DecayFitter
{
    private const int MostIterations = 40;
    private const int HuberIterations = 12;
    private const int MostOnStack = 256;

    /// <summary>Fits checked readings. Working weights and values of the last iteration are left in the spans, unless those are empty.</summary>
    [SkipLocalsInit]
    public static ExponentialDecay Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        Span<double> workingWeights,
        Span<double> workingValues
    )
    {
        var reweights = options.Noise != DecayNoise.Constant || options.Robust;
        var need = DecayColumns.Scratch(times.Length) + (reweights ? DecayReweighting.Scratch(times.Length) : 0);
        if (times.Length <= MostOnStack)
        {
            Span<double> scratch = stackalloc double[need];
            return Fit(times, values, weights, options, workingWeights, workingValues, scratch);
        }

        var rented = ArrayPool<double>.Shared.Rent(need);
        try
        {
            return Fit(times, values, weights, options, workingWeights, workingValues, rented.AsSpan(0, need));
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
        Span<double> scratch
    )
    {
        var origin = options.StartTime ?? LaneMath.Smallest(times);
        var counted = Counted(times, weights, options, origin);
        if (counted == 0)
        {
            return new ExponentialDecay(ExponentialDecayStatus.TooFewReadings, options.Noise, times.Length, origin);
        }

        var columnScratch = scratch.Slice(0, DecayColumns.Scratch(times.Length));
        if (options.Noise == DecayNoise.Constant && !options.Robust)
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

            return Solve(times, values, weights, options, origin, counted, columnScratch);
        }

        var reweighting = new DecayReweighting(
            times,
            values,
            weights,
            options.Noise,
            scratch.Slice(columnScratch.Length)
        );
        var fit = Iterate(times, reweighting, options, origin, counted, columnScratch);
        if (!workingWeights.IsEmpty)
        {
            reweighting.Weights.CopyTo(workingWeights);
            reweighting.Values.CopyTo(workingValues);
        }

        return options.Robust
            ? fit.WithVariance(
                reweighting.RobustVariance(
                    counted,
                    options.FreeParts,
                    fit.ResidualStandardDeviation * fit.ResidualStandardDeviation
                )
            )
            : fit;
    }

    private static ExponentialDecay Iterate(
        ReadOnlySpan<double> times,
        in DecayReweighting reweighting,
        ExponentialDecayOptions options,
        double origin,
        int counted,
        Span<double> scratch
    )
    {
        reweighting.Begin();
        var fit = Solve(times, reweighting.Values, reweighting.Weights, options, origin, counted, scratch);
        var curve = DecayCurve.Of(fit);
        for (var i = 0; i < MostIterations; i++)
        {
            var stage =
                !options.Robust ? RobustStage.None
                : i < HuberIterations ? RobustStage.Huber
                : RobustStage.Biweight;
            reweighting.Update(curve, stage);
            fit = Solve(times, reweighting.Values, reweighting.Weights, options, origin, counted, scratch);
            var next = DecayCurve.Of(fit);
            if (next.IsCloseTo(curve) && stage != RobustStage.Huber)
            {
                break;
            }

            if (options.Noise == DecayNoise.Logarithmic && !options.Robust)
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

        return fit;
    }

    private static ExponentialDecay Solve(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        double origin,
        int counted,
        Span<double> scratch
    )
    {
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
            curve = DecaySearch.Find(columns, shape, out limit, out sums);
        }

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
