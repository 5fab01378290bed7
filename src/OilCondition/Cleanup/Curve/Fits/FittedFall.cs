using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>A fitted fall with hours from its origin for time: by least squares, or by likelihood where readings lie below a limit.</summary>
internal abstract class FittedFall
{
    public abstract ExponentialDecayStatus Status { get; }
    public abstract int Count { get; }
    public abstract int AboveLimitCount { get; }
    public abstract double Start { get; }
    public abstract double Floor { get; }
    public abstract double Rate { get; }
    public abstract double Span { get; }
    public abstract double Scatter { get; }
    public abstract DecayNoise SuggestedNoise { get; }
    public abstract double Autocorrelation { get; }
    public abstract CourseCheck Course { get; }

    /// <summary>Whether every interval covers less often than it says.</summary>
    public abstract bool CoverageInDoubt { get; }

    /// <summary>Positions among the readings used.</summary>
    public abstract IReadOnlyList<int> FlaggedReadings { get; }

    /// <summary>Whether as many are flagged as are looked for.</summary>
    public abstract bool MoreFlagsPossible { get; }

    /// <summary>By how much the rate rises with the temperature, in ln a kelvin; null where that was not fitted.</summary>
    public virtual double? PerKelvin => null;

    public bool HasCurve =>
        Status is not (ExponentialDecayStatus.TooFewReadings or ExponentialDecayStatus.TooFewAboveLimit);

    /// <summary>Whether the rate is an estimate: at a limit of the search it is only that limit.</summary>
    public bool HasRate =>
        Status
            is ExponentialDecayStatus.Determined
                or ExponentialDecayStatus.AtFloorBound
                or ExponentialDecayStatus.Rising;

    public abstract double ValueAt(double hour);
    public abstract Interval RateInterval(double confidence, IntervalSide side);
    public abstract Interval HalfLifeInterval(double confidence, IntervalSide side);
    public abstract Interval FloorInterval(double confidence, IntervalSide side);
    public abstract Interval ValueInterval(double hour, double confidence, IntervalSide side);
    public abstract Interval Band(double hour, BandKind of, double confidence, IntervalSide side);
    public abstract TimeToValueInterval TimeTo(double target, double confidence, IntervalSide side);

    /// <summary>The lowest level that the readings leave, at one side, also with a second fall beside the first; null where they do not tell.</summary>
    public abstract double? LowestLevel(double confidence);

    /// <summary>Standard deviation of a reading where the curve stands at a value.</summary>
    public abstract double ScatterAt(double value);

    /// <summary>Interval for k (floor − value), and how it was made.</summary>
    public abstract Interval SlopeInterval(
        double value,
        double confidence,
        IntervalSide side,
        out CleanupFigureMethod method
    );

    /// <summary>Readings that tell the scatter, less fitted parts.</summary>
    public abstract int DegreesOfFreedom { get; }

    /// <summary>Covariance of start, floor and ln k; 0 for what is known, at its bound or not determined.</summary>
    public abstract DecayCovariance Covariance { get; }

    /// <summary>What the curve leaves of a reading used over the scatter expected of it; null where the reading is only a limit.</summary>
    public abstract double? Standardised(int index);

    /// <summary>Student's quantile for an end of an interval of the delta method.</summary>
    public abstract double Quantile(double confidence, IntervalSide side);

    /// <summary>Standard error of what the curve falls by between two hours (delta method).</summary>
    public virtual double FallStandardError(double from, double to)
    {
        var before = Math.Exp(-Rate * from);
        var after = Math.Exp(-Rate * to);

        // y = floor + (start − floor) e and de/d ln k = −k t e.
        var byStart = before - after;
        var byLogRate = (Start - Floor) * Rate * (to * after - from * before);
        return Math.Sqrt(Covariance.VarianceOf(byStart, -byStart, byLogRate));
    }
}
