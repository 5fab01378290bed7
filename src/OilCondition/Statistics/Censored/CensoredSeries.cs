namespace OilCondition.Statistics;

/// <summary>Readings of which some are only known to lie below their value, scaled as for the least-squares kernel.</summary>
internal sealed class CensoredSeries
{
    /// <summary>A curve is not taken as closer to zero than this part of the largest value, where its weight would be without bound.</summary>
    private const double SmallestShare = 1e-3;

    /// <summary>A reading that lies so far below its limit as good as surely tells nothing.</summary>
    private const double LeastRoot = 1e-6;

    private readonly double least;

    /// <summary>Prepares a series.</summary>
    public CensoredSeries(double[] times, double[] values, bool[] belowLimit, ExponentialDecayOptions options)
    {
        Array.Sort(times.ToArray(), values);
        Array.Sort(times.ToArray(), belowLimit);
        Array.Sort(times);
        var columns = new DecayColumns(
            new double[DecayColumns.Scratch(times.Length)],
            times,
            values,
            default,
            options.StartTime ?? times[0]
        );
        BelowLimit = belowLimit;
        Times = columns.Times.Slice(0, times.Length).ToArray();
        Values = columns.Values.Slice(0, times.Length).ToArray();
        Origin = columns.Origin;
        Span = columns.Span;
        Centre = columns.Centre;
        Unit = columns.Unit;
        LowestFloor = options.LowestFloor.HasValue
            ? columns.Scaled(options.LowestFloor.Value)
            : double.NegativeInfinity;
        Known = new CensoredKnown(
            options.Floor.HasValue ? columns.Scaled(options.Floor.Value) : double.NaN,
            options.Start.HasValue ? columns.Scaled(options.Start.Value) : double.NaN,
            options.Rate.HasValue ? Math.Log(options.Rate.Value * Span) : double.NaN
        );
        Levels = DecayScan.Octaves(columns, lead: 0);
        AboveCount = belowLimit.Count(below => !below);
        least = SmallestShare * values.Max(Math.Abs);
        PerSize = new double[times.Length];
        SetSizes(_ => Unit);
    }

    /// <summary>In order of time, in spans from the origin.</summary>
    public double[] Times { get; }
    public double[] Values { get; }
    public bool[] BelowLimit { get; }

    /// <summary>Unit over each reading's share in the scatter: 1 with constant noise, unit/curve with proportional noise.</summary>
    public double[] PerSize { get; }

    /// <summary>Sum of ln <see cref="PerSize"/> over the readings above their limit.</summary>
    public double LogPerSize { get; private set; }

    public double Origin { get; }
    public double Span { get; }
    public double Centre { get; }
    public double Unit { get; }
    public double LowestFloor { get; }
    public CensoredKnown Known { get; }
    public int Levels { get; }
    public int AboveCount { get; }
    public int Count => Times.Length;

    /// <summary>ln of the fastest rate of the search.</summary>
    public double Top => DecayScan.LogLowest + (Levels - 1) * DecayScan.Octave;

    public double Scaled(double value) => (value - Centre) / Unit;

    /// <summary>Takes the scatter in proportion to a curve.</summary>
    public void SetProportional(in CensoredPoint point, double u)
    {
        var curve = Curve(point, u);
        SetSizes(i => curve[i]);
    }

    /// <summary>Takes a share of the mean variance in proportion to a curve, the rest constant.</summary>
    /// <returns>Variance over the mean one where the curve stands at f: the first and the second times f².</returns>
    public (double Constant, double PerSquare) SetShares(double share, in CensoredPoint point, double u)
    {
        var curve = Curve(point, u);
        var squares = curve.Average(f => f * f);
        var (constant, perSquare) = (1 - share, share / squares);
        SetSizes(i => Unit * Math.Sqrt(constant + perSquare * curve[i] * curve[i]));
        return (constant, perSquare);
    }

    /// <summary>(h y − F − A e) p of a reading; linear in the point.</summary>
    public double Residual(int i, double remaining, in CensoredPoint point) =>
        PerSize[i] * (point.InverseScatter * Values[i] - point.Floor - point.Amplitude * remaining);

    /// <summary>Residuals over their scatter, in order of time; of a reading below its limit the one expected of it.</summary>
    public double[] Residuals(in CensoredPoint point, double u)
    {
        var residuals = new double[Count];
        var rate = Math.Exp(u);
        for (var i = 0; i < residuals.Length; i++)
        {
            residuals[i] = Residual(i, 1 - LaneMath.Drop(rate * Times[i]), point);
            if (BelowLimit[i])
            {
                NormalTail.LogProbability(residuals[i], out var ratio);
                residuals[i] = -ratio;
            }
        }

        return residuals;
    }

    /// <summary>
    /// The derivatives of the curve with residuals in step with the likelihood: a reading below its limit has the weight of its information,
    /// m (r + m) with m = φ(r)/Φ(r), and the residual that gives its slope, as in iterated least squares.
    /// </summary>
    public DecayDesign Design(in CensoredPoint point, double u, DecayParts parts)
    {
        var rate = Math.Exp(u);
        List<double> exponents = [];
        List<double> roots = [];
        List<double> residuals = [];
        for (var i = 0; i < Count; i++)
        {
            var x = rate * Times[i];
            var residual = Residual(i, 1 - LaneMath.Drop(x), point);
            double root = 1;
            if (BelowLimit[i])
            {
                NormalTail.LogProbability(residual, out var ratio);
                root = Math.Sqrt(Math.Max(0, ratio * (residual + ratio)));
                if (root < LeastRoot)
                {
                    continue;
                }

                residual = -ratio / root;
            }

            exponents.Add(x);
            roots.Add(root * PerSize[i] * point.InverseScatter);
            residuals.Add(residual);
        }

        return new DecayDesign([.. exponents], [.. roots], [.. residuals], parts);
    }

    private double[] Curve(CensoredPoint point, double u)
    {
        var sigma = Unit / point.InverseScatter;
        var rate = Math.Exp(u);
        var (floor, amplitude) = (Centre + sigma * point.Floor, sigma * point.Amplitude);
        return [.. Times.Select(t => Math.Max(least, floor + amplitude * (1 - LaneMath.Drop(rate * t))))];
    }

    private void SetSizes(Func<int, double> size)
    {
        LogPerSize = 0;
        for (var i = 0; i < Count; i++)
        {
            PerSize[i] = Unit / size(i);
            LogPerSize += BelowLimit[i] ? 0 : Math.Log(PerSize[i]);
        }
    }
}
