namespace OilCondition.Statistics;

/// <summary>The likelihood of a decay with readings below a limit, at one rate: concave there, so that Newton's method finds its one maximum.</summary>
/// <remarks>
/// Residual r = (h y − F − A e)·p with h = 1/σ, F = floor/σ, A = amplitude/σ, e = exp(−κ τ), and p the reciprocal of a reading's share in
/// the scatter: 1 with constant noise. A reading above its limit adds ln φ(r) + ln(h p), one below it ln Φ(r), y being the limit.
/// </remarks>
internal sealed class CensoredLikelihood
{
    private const int MostNewtonSteps = 60;
    private const int MostOnStack = 256;
    private static readonly double LogRootTwoPi = 0.5 * Math.Log(2 * Math.PI);

    private readonly CensoredSeries series;

    public CensoredLikelihood(CensoredSeries series) => this.series = series;

    /// <summary>A point to start Newton's method from: any will do.</summary>
    public static CensoredPoint Anywhere => new(0, 0, 2);

    /// <summary>ln of the largest likelihood at one rate, with an optional condition that the curve has a value at a time.</summary>
    /// <param name="u">ln(κ).</param>
    /// <param name="condition">F + A z = T, or none.</param>
    /// <param name="point">Where to start; where the maximum is.</param>
    /// <param name="slope">Derivative of that maximum by u.</param>
    /// <param name="atBound">Whether the floor is the lowest allowed.</param>
    public double AtRate(
        double u,
        in CensoredCondition condition,
        ref CensoredPoint point,
        out double slope,
        out bool atBound
    )
    {
        var rate = Math.Exp(u);
        Span<double> remaining =
            series.Count <= MostOnStack ? stackalloc double[series.Count] : new double[series.Count];
        for (var i = 0; i < remaining.Length; i++)
        {
            remaining[i] = 1 - LaneMath.Drop(rate * series.Times[i]);
        }

        atBound = false;
        var z = condition.ZAt(rate);
        var known = series.Known;
        var result = Maximize(remaining, condition.Directions(z, known.Floor, known.Start), ref point);
        if (!known.HasFloor && point.Floor < series.LowestFloor * point.InverseScatter)
        {
            atBound = true;
            result = Maximize(remaining, condition.Directions(z, series.LowestFloor, known.Start), ref point);
        }

        slope = Slope(remaining, rate, condition, z, point);
        return result;
    }

    /// <summary>By the envelope theorem the partial derivative, plus what the condition's own change with the rate costs.</summary>
    private double Slope(
        ReadOnlySpan<double> remaining,
        double rate,
        in CensoredCondition condition,
        double z,
        in CensoredPoint point
    )
    {
        double slope = 0;
        double byAmplitude = 0;
        double byFloor = 0;
        for (var i = 0; i < remaining.Length; i++)
        {
            var e = remaining[i];
            var r = series.Residual(i, e, point);
            double byResidual = -r;
            if (series.BelowLimit[i])
            {
                NormalTail.LogProbability(r, out byResidual);
            }

            byResidual *= series.PerSize[i];
            slope += byResidual * point.Amplitude * rate * series.Times[i] * e;
            byAmplitude -= byResidual * e;
            byFloor -= byResidual;
        }

        if (
            condition.IsNone
            || double.IsInfinity(condition.ScaledTime)
            || series.Known is { HasStart: true, HasFloor: true }
        )
        {
            return slope;
        }

        var constants = rate * condition.ScaledTime;
        if (series.Known.HasStart)
        {
            // With F + A fixed as well A is (s − T) h/(1 − z), and F moves against it.
            return slope + constants * z / (1 - z) * point.Amplitude * (byFloor - byAmplitude);
        }

        // Lagrange: the multiplier of F + A z = T is ∂ℓ/∂A over z.
        return z < CensoredCondition.SmallestZ && !series.Known.HasFloor
            ? slope
            : slope + byAmplitude * point.Amplitude * constants;
    }

    private double Value(ReadOnlySpan<double> remaining, in CensoredPoint point)
    {
        var sum = series.AboveCount * (Math.Log(point.InverseScatter / series.Unit) - LogRootTwoPi) + series.LogPerSize;
        for (var i = 0; i < remaining.Length; i++)
        {
            var r = series.Residual(i, remaining[i], point);
            sum += series.BelowLimit[i] ? NormalTail.LogProbability(r, out _) : -0.5 * r * r;
        }

        return sum;
    }

    /// <summary>Damped Newton steps within the space that the directions span.</summary>
    private double Maximize(ReadOnlySpan<double> remaining, CensoredPoint[] directions, ref CensoredPoint point)
    {
        point = directions.Length == 1 ? Alone(remaining, directions[0], point) : Project(directions, point);
        var value = Value(remaining, point);
        Span<double> gradient = stackalloc double[3];
        Span<double> hessian = stackalloc double[9];
        for (var step = 0; step < MostNewtonSteps; step++)
        {
            Derivatives(remaining, directions, point, gradient, hessian);
            if (!SmallSystem.TrySolve(hessian, gradient, directions.Length))
            {
                return value;
            }

            CensoredPoint move = default;
            for (var a = 0; a < directions.Length; a++)
            {
                move = move.Moved(directions[a], gradient[a]);
            }

            var share = 1.0;
            var next = point.Moved(move, share);
            var nextValue = next.InverseScatter > 0 ? Value(remaining, next) : double.NegativeInfinity;
            while (!(nextValue >= value) && share > 1e-10)
            {
                share /= 2;
                next = point.Moved(move, share);
                nextValue = next.InverseScatter > 0 ? Value(remaining, next) : double.NegativeInfinity;
            }

            if (!(nextValue >= value))
            {
                return value;
            }

            var gain = nextValue - value;
            point = next;
            value = nextValue;
            if (gain < 1e-12 * (1 + Math.Abs(value)) && share == 1)
            {
                return value;
            }
        }

        return value;
    }

    private void Derivatives(
        ReadOnlySpan<double> remaining,
        CensoredPoint[] directions,
        in CensoredPoint point,
        Span<double> gradient,
        Span<double> negativeHessian
    )
    {
        gradient.Clear();
        negativeHessian.Clear();
        var size = directions.Length;
        Span<double> x = stackalloc double[3];
        for (var i = 0; i < remaining.Length; i++)
        {
            var r = series.Residual(i, remaining[i], point);
            var first = -r;
            double second = 1;
            if (series.BelowLimit[i])
            {
                NormalTail.LogProbability(r, out first);
                second = first * (r + first);
            }

            for (var a = 0; a < size; a++)
            {
                x[a] = series.Residual(i, remaining[i], directions[a]);
                gradient[a] += first * x[a];
                for (var b = 0; b <= a; b++)
                {
                    negativeHessian[a * 3 + b] += second * x[a] * x[b];
                }
            }
        }

        for (var a = 0; a < size; a++)
        {
            var h = directions[a].InverseScatter / point.InverseScatter;
            gradient[a] += series.AboveCount * h;
            for (var b = 0; b <= a; b++)
            {
                negativeHessian[a * 3 + b] +=
                    series.AboveCount * h * directions[b].InverseScatter / point.InverseScatter;
            }
        }
    }

    /// <summary>Where the curve is given the scatter of the readings above their limit, close to the most likely one.</summary>
    private CensoredPoint Alone(ReadOnlySpan<double> remaining, in CensoredPoint direction, in CensoredPoint otherwise)
    {
        double squares = 0;
        for (var i = 0; i < remaining.Length; i++)
        {
            var x = series.BelowLimit[i] ? 0 : series.Residual(i, remaining[i], direction);
            squares += x * x;
        }

        var inverse = squares > 0 ? Math.Sqrt(series.AboveCount / squares) : otherwise.InverseScatter;
        return default(CensoredPoint).Moved(direction, inverse);
    }

    /// <summary>A point of the space that the directions span: their coordinates that stand alone keep their values.</summary>
    private static CensoredPoint Project(CensoredPoint[] directions, in CensoredPoint point)
    {
        CensoredPoint projected = default;
        foreach (var direction in directions)
        {
            var share =
                direction.InverseScatter == 1 ? point.InverseScatter
                : direction.Amplitude == 1 ? point.Amplitude
                : point.Floor;
            projected = projected.Moved(direction, share);
        }

        return projected;
    }
}
