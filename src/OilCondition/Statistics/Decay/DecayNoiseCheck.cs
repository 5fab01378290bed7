namespace OilCondition.Statistics;

/// <summary>Compares the noise model of a fit with the other one, by the likelihood of the readings.</summary>
internal static class DecayNoiseCheck
{
    /// <summary>ln of how much more likely the readings must be; both models have as many parts, so that 2 is clear evidence.</summary>
    private const double ClearEvidence = 2;

    public static DecayNoise Suggest(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options,
        in ExponentialDecay fit
    )
    {
        if (
            fit.Status == ExponentialDecayStatus.TooFewReadings
            || options.Robust
            || options.Noise == DecayNoise.TwoComponent
        )
        {
            return options.Noise;
        }

        var other = options.Noise == DecayNoise.Constant ? DecayNoise.Proportional : DecayNoise.Constant;
        var otherFit = DecayFitter.Fit(times, values, weights, options.With(other), default, default);
        return
            TryLogLikelihood(times, values, fit, out var mine)
            && TryLogLikelihood(times, values, otherFit, out var others)
            && others > mine + ClearEvidence
            ? other
            : options.Noise;
    }

    /// <summary>But for a constant that both models share: −n/2 ln(RSS/n) − sum of ln(standard deviation's share of each reading).</summary>
    private static bool TryLogLikelihood(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        in ExponentialDecay fit,
        out double logLikelihood
    )
    {
        logLikelihood = 0;
        if (!(fit.ResidualSumOfSquares > 0))
        {
            return false;
        }

        logLikelihood = -0.5 * fit.Count * Math.Log(fit.ResidualSumOfSquares / fit.Count);
        for (var i = 0; i < times.Length && fit.Noise != DecayNoise.Constant; i++)
        {
            var size = fit.Noise == DecayNoise.Logarithmic ? values[i] : fit.ValueAt(times[i]);
            if (!(size > 0))
            {
                return false;
            }

            logLikelihood -= Math.Log(size);
        }

        return true;
    }
}
