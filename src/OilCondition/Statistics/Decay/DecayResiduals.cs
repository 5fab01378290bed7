namespace OilCondition.Statistics;

/// <summary>What the readings leave over of a fit, each over the scatter expected of it.</summary>
internal sealed class DecayResiduals
{
    /// <summary>Of readings in order of time.</summary>
    /// <param name="times">Times.</param>
    /// <param name="values">Values.</param>
    /// <param name="weights">Weights, or empty.</param>
    /// <param name="fit">The fit.</param>
    /// <param name="order">Where each was given, or null.</param>
    public DecayResiduals(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in ExponentialDecay fit,
        int[]? order
    )
    {
        var residuals = new double[times.Length];
        var scatter = fit.ResidualStandardDeviation;
        if (fit.Status != ExponentialDecayStatus.TooFewReadings && scatter > 0)
        {
            Fill(times, values, weights, fit, residuals);
        }

        LagOne = SerialCorrelation.LagOne(residuals);
        InGivenOrder = residuals;
        if (order is not null)
        {
            InGivenOrder = new double[residuals.Length];
            for (var i = 0; i < residuals.Length; i++)
            {
                InGivenOrder[order[i]] = residuals[i];
            }
        }
    }

    public double[] InGivenOrder { get; }

    /// <summary>Correlation of each residual with the next in time.</summary>
    public double LagOne { get; }

    private static void Fill(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in ExponentialDecay fit,
        Span<double> residuals
    )
    {
        var perScatter = 1 / fit.ResidualStandardDeviation;
        var smallest = 1e-9 * Math.Abs(fit.Start);
        var i = 0;
        if (fit.Noise == DecayNoise.Constant && weights.IsEmpty)
        {
            var change = LaneMath.Of(fit.Floor - fit.Start);
            for (; i <= residuals.Length - LaneMath.Width; i += LaneMath.Width)
            {
                var x = (LaneMath.Load(times, i) - LaneMath.Of(fit.StartTime)) * LaneMath.Of(fit.Rate);
                var residual = LaneMath.Load(values, i) - LaneMath.Of(fit.Start) - change * LaneMath.Drop(x);
                LaneMath.Store(residual * LaneMath.Of(perScatter), residuals, i);
            }
        }

        for (; i < residuals.Length; i++)
        {
            var f = fit.Start + (fit.Floor - fit.Start) * LaneMath.Drop(fit.Rate * (times[i] - fit.StartTime));
            var size = fit.ScatterAt(Math.Max(Math.Abs(f), smallest));
            var residual =
                fit.Noise == DecayNoise.Logarithmic && f > 0 ? Math.Log(values[i] / f) * perScatter
                : size > 0 ? (values[i] - f) / size
                : 0;
            residuals[i] = residual * (weights.IsEmpty ? 1 : Math.Sqrt(weights[i]));
        }
    }
}
