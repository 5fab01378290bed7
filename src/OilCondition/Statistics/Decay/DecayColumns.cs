namespace OilCondition.Statistics;

/// <summary>One series made ready for the kernel: times in spans from the origin, values centred and scaled, weights of mean one.</summary>
/// <remarks>Filled up to a whole number of lanes with readings of weight 0, so that no loop has a remainder.</remarks>
internal readonly ref struct DecayColumns
{
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
        scratch.Slice(0, 4 * padded).Clear();
        Times = scratch.Slice(0, padded);
        Values = scratch.Slice(padded, padded);
        Weights = scratch.Slice(2 * padded, padded);
        Drops = scratch.Slice(3 * padded, padded);
        Origin = origin;

        double last = 0;
        double totalWeight = 0;
        double sum = 0;
        for (var i = 0; i < Count; i++)
        {
            var weight = weights.IsEmpty ? 1 : weights[i];
            last = Math.Max(last, times[i] - origin);
            totalWeight += weight;
            sum += weight * values[i];
        }

        Span = last;
        WeightUnit = totalWeight / Count;
        Centre = sum / totalWeight;
        double spread = 0;
        var gap = double.PositiveInfinity;
        for (var i = 0; i < Count; i++)
        {
            var after = times[i] - origin;
            spread = Math.Max(spread, Math.Abs(values[i] - Centre));
            gap = after > 0 && after < gap ? after : gap;
        }

        Unit = spread > 0 ? spread : 1;
        FirstGap = last > 0 ? gap / last : 1;
        Flat = spread <= 1e-15 * Math.Abs(Centre);
        double sumY = 0;
        double sumYY = 0;
        for (var i = 0; i < Count; i++)
        {
            var weight = weights.IsEmpty ? 1 : weights[i] / WeightUnit;
            var y = (values[i] - Centre) / Unit;
            Times[i] = last > 0 ? (times[i] - origin) / last : 0;
            Values[i] = y;
            Weights[i] = weight;
            sumY += weight * y;
            sumYY += weight * y * y;
        }

        SumY = sumY;
        SumYY = sumYY;
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

    /// <summary>First positive time, in spans.</summary>
    public double FirstGap { get; }

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

    /// <summary>The same at twice the rate of the last pass, without an exponential: 1 − e² = d (2 − d).</summary>
    public DecaySums Doubled()
    {
        var two = LaneMath.Of(2);
        Lanes p = default;
        Lanes q = default;
        Lanes r = default;
        for (var i = 0; i < Times.Length; i += LaneMath.Width)
        {
            var d = LaneMath.Load(Drops, i);
            d *= two - d;
            LaneMath.Store(d, Drops, i);
            var wd = LaneMath.Load(Weights, i) * d;
            p += wd;
            q = LaneMath.MultiplyAdd(wd, d, q);
            r = LaneMath.MultiplyAdd(wd, LaneMath.Load(Values, i), r);
        }

        return new DecaySums(LaneMath.Sum(p), LaneMath.Sum(q), LaneMath.Sum(r));
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
