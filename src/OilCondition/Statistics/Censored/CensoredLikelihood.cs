using MathNet.Numerics.LinearAlgebra;

namespace OilCondition.Statistics;

/// <summary>The likelihood of a decay with readings below a limit: for one rate by Newton's method, over the rates by its derivative.</summary>
internal sealed class CensoredLikelihood
{
    private const int MostNewtonSteps = 60;
    private static readonly double LogRootTwoPi = 0.5 * Math.Log(2 * Math.PI);

    private readonly double[] times;
    private readonly double[] values;
    private readonly bool[] belowLimit;
    private readonly double lowestFloor;
    private readonly double[] remaining;

    public CensoredLikelihood(double[] times, double[] values, bool[] belowLimit, double? lowestFloor)
    {
        var scratch = new double[DecayColumns.Scratch(times.Length)];
        var columns = new DecayColumns(scratch, times, values, default, times.Min());
        this.belowLimit = belowLimit;
        this.times = columns.Times.Slice(0, times.Length).ToArray();
        this.values = columns.Values.Slice(0, times.Length).ToArray();
        remaining = new double[times.Length];
        Origin = columns.Origin;
        Span = columns.Span;
        Centre = columns.Centre;
        Unit = columns.Unit;
        this.lowestFloor = lowestFloor.HasValue ? columns.Scaled(lowestFloor.Value) : double.NegativeInfinity;
        Levels = DecaySearch.Levels(columns);
        AboveCount = belowLimit.Count(below => !below);
    }

    public double Origin { get; }
    public double Span { get; }
    public double Centre { get; }
    public double Unit { get; }
    public int Levels { get; }
    public int Count => times.Length;
    public int AboveCount { get; }
    public double LowestFloor => lowestFloor;

    /// <summary>ln of the slowest rate of the search.</summary>
    public static double Bottom => Math.Log(DecaySearch.LowestScaledRate);

    /// <summary>ln of the fastest rate of the search.</summary>
    public double Top => Bottom + (Levels - 1) * Math.Log(2);

    /// <summary>A point to start Newton's method from: any will do.</summary>
    public static CensoredPoint Anywhere => new(0, 0, 2);

    /// <summary>ln of the largest likelihood at one rate, with an optional condition that the curve has a value at a time.</summary>
    /// <param name="u">ln(κ).</param>
    /// <param name="condition">F + A z = T, or none.</param>
    /// <param name="point">Where to start; where the maximum is.</param>
    /// <param name="slope">Derivative by u, right only without a condition.</param>
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
        for (var i = 0; i < times.Length; i++)
        {
            remaining[i] = 1 - LaneMath.Drop(rate * times[i]);
        }

        atBound = false;
        var z = condition.ZAt(rate);
        var result = Maximize(condition.Directions(z, double.NaN), ref point);
        if (point.Floor < lowestFloor * point.InverseScatter)
        {
            atBound = true;
            result = Maximize(condition.Directions(z, lowestFloor), ref point);
        }

        slope = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var e = remaining[i];
            var r = point.InverseScatter * values[i] - point.Floor - point.Amplitude * e;
            var bend = point.Amplitude * rate * times[i] * e;
            if (belowLimit[i])
            {
                NormalTail.LogProbability(r, out var ratio);
                slope += ratio * bend;
            }
            else
            {
                slope -= r * bend;
            }
        }

        return result;
    }

    /// <summary>ln of the largest likelihood over all rates.</summary>
    public double Maximum(in CensoredCondition condition, ref CensoredPoint point, out double u, out bool atBound)
    {
        var ln2 = Math.Log(2);
        var best = double.NegativeInfinity;
        var level = 0;
        var bestPoint = point;
        for (var i = 0; i < Levels; i++)
        {
            var here = AtRate(Bottom + i * ln2, condition, ref point, out _, out _);
            if (here > best)
            {
                best = here;
                level = i;
                bestPoint = point;
            }
        }

        point = bestPoint;
        var from = Bottom + Math.Max(0, level - 1) * ln2;
        var to = Bottom + Math.Min(Levels - 1, level + 1) * ln2;
        u = condition.IsNone
            ? Stationary(from, to, Bottom + level * ln2, ref point)
            : Golden(condition, from, to, ref point);
        return AtRate(u, condition, ref point, out _, out atBound);
    }

    /// <summary>Covariance of floor, start, ln k and ln σ from the observed information; null where that is not positive definite.</summary>
    public Matrix<double>? Covariance(in CensoredPoint point, double u, bool atBound)
    {
        var rate = Math.Exp(u);
        var sigma = 1 / point.InverseScatter;
        var floor = point.Floor * sigma;
        var amplitude = point.Amplitude * sigma;
        var information = Matrix<double>.Build.Dense(4, 4);
        for (var i = 0; i < times.Length; i++)
        {
            var x = rate * times[i];
            var e = 1 - LaneMath.Drop(x);
            var r = (values[i] - floor - amplitude * e) / sigma;
            double byMean;
            double byMeanTwice;
            double byMeanAndScatter;
            double byScatterTwice;
            if (belowLimit[i])
            {
                NormalTail.LogProbability(r, out var ratio);
                var change = -ratio * (r + ratio);
                byMean = -ratio / sigma;
                byMeanTwice = change / (sigma * sigma);
                byMeanAndScatter = (change * r + ratio) / sigma;
                byScatterTwice = change * r * r + ratio * r;
            }
            else
            {
                byMean = r / sigma;
                byMeanTwice = -1 / (sigma * sigma);
                byMeanAndScatter = -2 * r / sigma;
                byScatterTwice = -2 * r * r;
            }

            // Parts: floor, start, ln k. The curve is floor (1 − e) + start e.
            var bend = -amplitude * x * e;
            ReadOnlySpan<double> gradient = [1 - e, e, bend];
            for (var a = 0; a < 3; a++)
            {
                for (var b = 0; b < 3; b++)
                {
                    information[a, b] -= byMeanTwice * gradient[a] * gradient[b];
                }

                information[a, 3] -= byMeanAndScatter * gradient[a];
                information[3, a] -= byMeanAndScatter * gradient[a];
            }

            information[0, 2] -= byMean * x * e;
            information[2, 0] -= byMean * x * e;
            information[1, 2] += byMean * x * e;
            information[2, 1] += byMean * x * e;
            information[2, 2] -= byMean * bend * (1 - x);
            information[3, 3] -= byScatterTwice;
        }

        if (atBound)
        {
            // A floor at its bound does not move.
            for (var a = 0; a < 4; a++)
            {
                information[0, a] = 0;
                information[a, 0] = 0;
            }

            information[0, 0] = 1e30;
        }

        var scale = information.Diagonal().PointwiseAbs().PointwiseSqrt();
        if (scale.Minimum() <= 0)
        {
            return null;
        }

        var unit = information.MapIndexed((a, b, value) => value / (scale[a] * scale[b]));
        return unit.Determinant() > 1e-14
            ? unit.Inverse().MapIndexed((a, b, value) => value / (scale[a] * scale[b]))
            : null;
    }

    private double Stationary(double from, double to, double u, ref CensoredPoint point)
    {
        // The derivative falls through zero at the maximum: false position, kept honest by halving.
        double? before = null;
        double? after = null;
        for (var i = 0; i < 100; i++)
        {
            AtRate(u, CensoredCondition.None, ref point, out var slope, out _);
            if (slope > 0)
            {
                from = u;
                before = slope;
            }
            else
            {
                to = u;
                after = slope;
            }

            if (to - from < 1e-11 || slope == 0)
            {
                break;
            }

            var share =
                i % 3 != 2 && before.HasValue && after.HasValue ? before.Value / (before.Value - after.Value) : 0.5;
            u = from + (to - from) * Math.Max(1e-4, Math.Min(0.9999, share));
        }

        return u;
    }

    private double Golden(in CensoredCondition condition, double from, double to, ref CensoredPoint point)
    {
        var golden = (Math.Sqrt(5) - 1) / 2;
        var u1 = to - golden * (to - from);
        var u2 = from + golden * (to - from);
        var y1 = AtRate(u1, condition, ref point, out _, out _);
        var y2 = AtRate(u2, condition, ref point, out _, out _);
        while (to - from > 1e-5)
        {
            if (y1 >= y2)
            {
                to = u2;
                u2 = u1;
                y2 = y1;
                u1 = to - golden * (to - from);
                y1 = AtRate(u1, condition, ref point, out _, out _);
            }
            else
            {
                from = u1;
                u1 = u2;
                y1 = y2;
                u2 = from + golden * (to - from);
                y2 = AtRate(u2, condition, ref point, out _, out _);
            }
        }

        return (from + to) / 2;
    }

    private double Value(in CensoredPoint point)
    {
        double sum = AboveCount * (Math.Log(point.InverseScatter / Unit) - LogRootTwoPi);
        for (var i = 0; i < times.Length; i++)
        {
            var r = point.InverseScatter * values[i] - point.Floor - point.Amplitude * remaining[i];
            sum += belowLimit[i] ? NormalTail.LogProbability(r, out _) : -0.5 * r * r;
        }

        return sum;
    }

    /// <summary>Damped Newton steps within the space that the directions span. The likelihood is concave there.</summary>
    private double Maximize(CensoredPoint[] directions, ref CensoredPoint point)
    {
        point = Project(directions, point);
        var value = Value(point);
        Span<double> gradient = stackalloc double[3];
        Span<double> hessian = stackalloc double[9];
        for (var step = 0; step < MostNewtonSteps; step++)
        {
            Derivatives(directions, point, gradient, hessian);
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
            var nextValue = next.InverseScatter > 0 ? Value(next) : double.NegativeInfinity;
            while (!(nextValue >= value) && share > 1e-10)
            {
                share /= 2;
                next = point.Moved(move, share);
                nextValue = next.InverseScatter > 0 ? Value(next) : double.NegativeInfinity;
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
        for (var i = 0; i < times.Length; i++)
        {
            var r = point.InverseScatter * values[i] - point.Floor - point.Amplitude * remaining[i];
            double first;
            double second;
            if (belowLimit[i])
            {
                NormalTail.LogProbability(r, out first);
                second = first * (r + first);
            }
            else
            {
                first = -r;
                second = 1;
            }

            for (var a = 0; a < size; a++)
            {
                x[a] =
                    directions[a].InverseScatter * values[i]
                    - directions[a].Floor
                    - directions[a].Amplitude * remaining[i];
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
            gradient[a] += AboveCount * h;
            for (var b = 0; b <= a; b++)
            {
                negativeHessian[a * 3 + b] += AboveCount * h * directions[b].InverseScatter / point.InverseScatter;
            }
        }
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
