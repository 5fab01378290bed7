using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>
/// The readings seen through one ratio of random-walk part to reading scatter: one pass of the Kalman filter over them, exact for any spacing.
/// </summary>
/// <remarks>
/// State x(t) = x0 + d t + sqrt(σ² q) W(t), reading y = x + e, e of variance σ² r. x0 is diffuse; the drift enters as a regression: readings
/// and elapsed time pass the same filter, and the innovations v of both give d = Σ vt vy / f / Σ vt² / f by least squares. Restricted
/// log-likelihood (x0, d and σ² integrated out): −½ Σ ln f − ½ ln Σ vt²/f − ½ (n − 2) ln Σ (vy − d vt)²/f.
/// Harville 1974 for the restricted likelihood, Harvey 1989 for the diffuse start.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct RandomWalkMember
{
    private RandomWalkMember(
        double randomWalk,
        double level,
        double levelReach,
        double levelVariance,
        double drift,
        double driftVariance,
        double scale2,
        double logLikelihood
    )
    {
        RandomWalk = randomWalk;
        Level = level;
        LevelReach = levelReach;
        LevelVariance = levelVariance;
        Drift = drift;
        DriftVariance = driftVariance;
        Scale2 = scale2;
        LogLikelihood = logLikelihood;
    }

    /// <summary>Wiener variance per time, q, in units of <see cref="Scale2"/>.</summary>
    public double RandomWalk { get; }

    /// <summary>State at the last reading.</summary>
    public double Level { get; }

    /// <summary>How far an error of the drift moves the level at the last reading, as a time.</summary>
    public double LevelReach { get; }

    /// <summary>Variance of the level at known drift, in units of <see cref="Scale2"/>.</summary>
    public double LevelVariance { get; }

    /// <summary>Drift, d.</summary>
    public double Drift { get; }

    /// <summary>Variance of the drift, in units of <see cref="Scale2"/>.</summary>
    public double DriftVariance { get; }

    /// <summary>Estimate of σ², with n − 2 degrees of freedom.</summary>
    public double Scale2 { get; }

    /// <summary>Restricted log-likelihood, up to a constant of the readings.</summary>
    public double LogLikelihood { get; }

    public static RandomWalkMember Filter(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double randomWalk,
        double reading,
        double leastSquares
    )
    {
        var level = values[0];
        double elapsed = 0;
        var variance = reading;
        double logs = 0;
        double tt = 0;
        double ty = 0;
        double yy = 0;
        for (var i = 1; i < times.Length; i++)
        {
            variance += randomWalk * (times[i] - times[i - 1]);
            var f = variance + reading;
            var vy = values[i] - level;
            var vt = times[i] - times[0] - elapsed;
            var gain = variance / f;
            level += gain * vy;
            elapsed += gain * vt;
            variance = gain * reading;
            logs += Math.Log(f);
            tt += vt * vt / f;
            ty += vt * vy / f;
            yy += vy * vy / f;
        }

        var drift = ty / tt;
        var freedom = times.Length - 2;

        // The floor stands for readings without any scatter; ty²/tt is within rounding of yy then.
        var squares = Math.Max(
            yy - drift * ty,
            leastSquares / (reading + randomWalk * (times[times.Length - 1] - times[0]))
        );
        var reach = times[times.Length - 1] - times[0] - elapsed;
        return new RandomWalkMember(
            randomWalk,
            level + drift * reach,
            reach,
            variance,
            drift,
            1 / tt,
            squares / freedom,
            -0.5 * (logs + Math.Log(tt) + freedom * Math.Log(squares))
        );
    }

    /// <summary>
    /// The same with a normal prior on the drift: precisions add, and the likelihood takes the chance of a drift so far from the prior.
    /// </summary>
    public RandomWalkMember With(double priorDrift, double priorStandardDeviation)
    {
        var prior = priorStandardDeviation * priorStandardDeviation / Scale2;
        var both = DriftVariance + prior;
        var drift = (Drift * prior + priorDrift * DriftVariance) / both;
        var off = Drift - priorDrift;
        return new RandomWalkMember(
            RandomWalk,
            Level + (drift - Drift) * LevelReach,
            LevelReach,
            LevelVariance,
            drift,
            DriftVariance * prior / both,
            Scale2,
            LogLikelihood - 0.5 * (Math.Log(both * Scale2) + off * off / (both * Scale2))
        );
    }
}
