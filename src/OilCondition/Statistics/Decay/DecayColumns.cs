namespace OilCondition.Statistics;

/// <summary>One series made ready for the kernel: times in spans from the origin, values centred and scaled, weights of mean one.</summary>
/// <remarks>Filled up to a whole number of lanes with readings of weight 0, so that no loop has a remainder.</remarks>
internal readonly ref struct DecayColumns
{
    /// <summary>Times or values that differ by less are the same: their reciprocal would be without bound.</summary>
    public const double Least = 1e-290;

    /// <summary>Doubles of scratch space that a series of <paramref name="count"/> readings needs.</summary>
    public static int Scratch(int count) => 4 * Padded(count);

    /// <summary>Prepares a series.</summary>
    /// <param name="scratch">At least <see cref="Scratch"/> doubles.</param>
    /// <param name="times">Times.</param>
    /// <param name="values">Values.</param>
    /// <param name="weights">Weights, or empty for equal ones.</param>
    /// <param name="origin">Time at which the drop is zero.</param>
    public DecayColumns(
        Span<double> scratch,
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        double origin
    )
    {
        Count = times.Length;
        var padded = Padded(Count);
        Times = scratch.Slice(0, padded);
        Values = scratch.Slice(padded, padded);
        Weights = scratch.Slice(2 * padded, padded);
        Drops = scratch.Slice(3 * padded, padded);
        Origin = origin;
        times.CopyTo(Times);
        Times.Slice(Count).Fill(origin);
        values.CopyTo(Values);
        Values.Slice(Count).Clear();
        Weights.Slice(Count).Clear();
        if (weights.IsEmpty)
        {
            Weights.Slice(0, Count).Fill(1);
        }
        else
        {
            weights.CopyTo(Weights);
        }

        var begin = LaneMath.Of(origin);
        Lanes last = default;
        Lanes totalWeight = default;
        Lanes sum = default;
        for (var i = 0; i < padded; i += LaneMath.Width)
        {
            var weight = LaneMath.Load(Weights, i);
            last = LaneMath.Max(last, LaneMath.Load(Times, i) - begin);
            totalWeight += weight;
            sum = LaneMath.MultiplyAdd(weight, LaneMath.Load(Values, i), sum);
        }

        Span = LaneMath.Largest(last);
        var allWeight = LaneMath.Sum(totalWeight);
        WeightUnit = weights.IsEmpty ? 1 : allWeight / Count;
        Centre = LaneMath.Sum(sum) / allWeight;
        Values.Slice(Count).Fill(Centre);

        var centre = LaneMath.Of(Centre);
        var perSpan = LaneMath.Of(Span >= Least ? 1 / Span : 0);
        var zero = LaneMath.Of(0);
        var none = LaneMath.Of(1);
        var gap = none;
        var first = none;
        Lanes spread = default;
        for (var i = 0; i < padded; i += LaneMath.Width)
        {
            var after = (LaneMath.Load(Times, i) - begin) * perSpan;
            LaneMath.Store(after, Times, i);
            var counts = LaneMath.Load(Weights, i);
            gap = LaneMath.Min(
                gap,
                LaneMath.WhereLess(zero, after, LaneMath.WhereLess(zero, counts, after, none), none)
            );
            first = LaneMath.Min(first, LaneMath.WhereLess(zero, counts, after, none));
            var y = LaneMath.Load(Values, i) - centre;
            LaneMath.Store(y, Values, i);
            spread = LaneMath.Max(spread, LaneMath.Max(y, zero - y));
        }

        var widest = LaneMath.Largest(spread);
        Unit = widest >= Least ? widest : 1;
        FirstGap = -LaneMath.Largest(zero - gap);
        Lead = -LaneMath.Largest(zero - first);
        Flat = widest <= 1e-15 * Math.Abs(Centre) || widest < Least;
        var perUnit = LaneMath.Of(1 / Unit);
        var perWeight = LaneMath.Of(1 / WeightUnit);
        Lanes sumY = default;
        Lanes sumYY = default;
        for (var i = 0; i < padded; i += LaneMath.Width)
        {
            var y = LaneMath.Load(Values, i) * perUnit;
            var weight = LaneMath.Load(Weights, i) * perWeight;
            LaneMath.Store(y, Values, i);
            LaneMath.Store(weight, Weights, i);
            sumY = LaneMath.MultiplyAdd(weight, y, sumY);
            sumYY = LaneMath.MultiplyAdd(weight * y, y, sumYY);
        }

        SumY = LaneMath.Sum(sumY);
        SumYY = LaneMath.Sum(sumYY);
    }

    public int Count { get; }
    public Span<double> Times { get; }
    public Span<double> Values { get; }
    public Span<double> Weights { get; }

    /// <summary>1 − exp(−κ τ) of the last pass.</summary>
    public Span<double> Drops { get; }

    public double Origin { get; }

    /// <summary>From the origin to the last reading: the unit of time.</summary>
    public double Span { get; }

    /// <summary>Weighted mean of the values, the zero of the scaled ones.</summary>
    public double Centre { get; }

    /// <summary>Unit of the scaled values.</summary>
    public double Unit { get; }

    /// <summary>What a weight of one stands for.</summary>
    public double WeightUnit { get; }

    /// <summary>First positive time of a reading that counts, in spans.</summary>
    public double FirstGap { get; }

    /// <summary>Time of the first reading that counts, in spans: 0 unless the curve begins before it.</summary>
    public double Lead { get; }

    /// <summary>Whether all values are equal but for their last bits.</summary>
    public bool Flat { get; }

    public double SumY { get; }
    public double SumYY { get; }

    public double Scaled(double value) => (value - Centre) / Unit;

    public double Unscaled(double value) => Centre + value * Unit;

    /// <summary>Weighted sums of the drop at a rate, the drop itself left in <see cref="Drops"/>.</summary>
    public DecaySums Exponential(double scaledRate)
    {
        var rate = LaneMath.Of(scaledRate);
        Lanes p = default;
        Lanes q = default;
        Lanes r = default;
        for (var i = 0; i < Times.Length; i += LaneMath.Width)
        {
            var d = LaneMath.Drop(LaneMath.Load(Times, i) * rate);
            LaneMath.Store(d, Drops, i);
            var wd = LaneMath.Load(Weights, i) * d;
            p += wd;
            q = LaneMath.MultiplyAdd(wd, d, q);
            r = LaneMath.MultiplyAdd(wd, LaneMath.Load(Values, i), r);
        }

        return new DecaySums(LaneMath.Sum(p), LaneMath.Sum(q), LaneMath.Sum(r));
    }

    /// <summary>The least squares at a rate and at its doubles, four levels a pass and without exponentials: 1 − e² = d (2 − d).</summary>
    /// <param name="scaledRate">The first rate.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="squares">One residual sum of squares a level; a whole number of lanes.</param>
    /// <param name="free">The same without a lowest floor.</param>
    public void Octaves(double scaledRate, in DecayShape shape, Span<double> squares, Span<double> free)
    {
        var rate = LaneMath.Of(scaledRate);
        var two = LaneMath.Of(2);
        for (var i = 0; i < Times.Length; i += LaneMath.Width)
        {
            LaneMath.Store(LaneMath.Drop(LaneMath.Load(Times, i) * rate), Drops, i);
        }

        for (var level = 0; level < squares.Length; level += LaneMath.Width)
        {
            Lanes p0 = default;
            Lanes p1 = default;
            Lanes p2 = default;
            Lanes p3 = default;
            Lanes q0 = default;
            Lanes q1 = default;
            Lanes q2 = default;
            Lanes q3 = default;
            Lanes r0 = default;
            Lanes r1 = default;
            Lanes r2 = default;
            Lanes r3 = default;
            for (var i = 0; i < Times.Length; i += LaneMath.Width)
            {
                var d = LaneMath.Load(Drops, i);
                var w = LaneMath.Load(Weights, i);
                var y = LaneMath.Load(Values, i);
                var wd = w * d;
                p0 += wd;
                q0 = LaneMath.MultiplyAdd(wd, d, q0);
                r0 = LaneMath.MultiplyAdd(wd, y, r0);
                d *= two - d;
                wd = w * d;
                p1 += wd;
                q1 = LaneMath.MultiplyAdd(wd, d, q1);
                r1 = LaneMath.MultiplyAdd(wd, y, r1);
                d *= two - d;
                wd = w * d;
                p2 += wd;
                q2 = LaneMath.MultiplyAdd(wd, d, q2);
                r2 = LaneMath.MultiplyAdd(wd, y, r2);
                d *= two - d;
                wd = w * d;
                p3 += wd;
                q3 = LaneMath.MultiplyAdd(wd, d, q3);
                r3 = LaneMath.MultiplyAdd(wd, y, r3);
                LaneMath.Store(d * (two - d), Drops, i);
            }

            var least = shape.LeastSquares(
                LaneMath.Sums(p0, p1, p2, p3),
                LaneMath.Sums(q0, q1, q2, q3),
                LaneMath.Sums(r0, r1, r2, r3),
                out var leastFree
            );
            LaneMath.Store(leastFree, free, level);
            LaneMath.Store(least, squares, level);
        }
    }

    /// <summary>The same sums at four rates, one a lane, the drops not kept.</summary>
    /// <param name="scaledRates">The rates.</param>
    /// <param name="d">Sums of the drop.</param>
    /// <param name="dd">Sums of its square.</param>
    /// <param name="dy">Sums of its product with the value.</param>
    public void AtFourRates(Lanes scaledRates, out Lanes d, out Lanes dd, out Lanes dy)
    {
        Lanes p = default;
        Lanes q = default;
        Lanes r = default;
        for (var i = 0; i < Count; i++)
        {
            var drop = LaneMath.Drop(LaneMath.Of(Times[i]) * scaledRates);
            var wd = LaneMath.Of(Weights[i]) * drop;
            p += wd;
            q = LaneMath.MultiplyAdd(wd, drop, q);
            r = LaneMath.MultiplyAdd(wd, LaneMath.Of(Values[i]), r);
        }

        d = p;
        dd = q;
        dy = r;
    }

    /// <summary>The sums with their first and second derivatives by u = ln κ: d' = x e, d'' = x (1 − x) e with x = κ τ, e = 1 − d.</summary>
    public DecaySums WithDerivatives(double scaledRate)
    {
        var rate = LaneMath.Of(scaledRate);
        var one = LaneMath.Of(1);
        for (var i = 0; i < Times.Length; i += LaneMath.Width)
        {
            LaneMath.Store(LaneMath.Drop(LaneMath.Load(Times, i) * rate), Drops, i);
        }

        // Two loops: the polynomial and nine running sums do not fit the registers together.
        Lanes p = default;
        Lanes q = default;
        Lanes r = default;
        Lanes p1 = default;
        Lanes q1 = default;
        Lanes r1 = default;
        Lanes p2 = default;
        Lanes q2 = default;
        Lanes r2 = default;
        for (var i = 0; i < Times.Length; i += LaneMath.Width)
        {
            var d = LaneMath.Load(Drops, i);
            var w = LaneMath.Load(Weights, i);
            var y = LaneMath.Load(Values, i);
            var x = LaneMath.Load(Times, i) * rate;
            var d1 = x * (one - d);
            var d2 = d1 * (one - x);
            var wd = w * d;
            var wd1 = w * d1;
            var wd2 = w * d2;
            p += wd;
            q = LaneMath.MultiplyAdd(wd, d, q);
            r = LaneMath.MultiplyAdd(wd, y, r);
            p1 += wd1;
            q1 = LaneMath.MultiplyAdd(wd1, d, q1);
            r1 = LaneMath.MultiplyAdd(wd1, y, r1);
            p2 += wd2;
            q2 = LaneMath.MultiplyAdd(wd1, d1, LaneMath.MultiplyAdd(wd2, d, q2));
            r2 = LaneMath.MultiplyAdd(wd2, y, r2);
        }

        return new DecaySums(
            LaneMath.Sum(p),
            LaneMath.Sum(q),
            LaneMath.Sum(r),
            LaneMath.Sum(p1),
            2 * LaneMath.Sum(q1),
            LaneMath.Sum(r1),
            LaneMath.Sum(p2),
            2 * LaneMath.Sum(q2),
            LaneMath.Sum(r2)
        );
    }

    private static int Padded(int count) => (count + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;
}
