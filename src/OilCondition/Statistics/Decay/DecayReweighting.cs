namespace OilCondition.Statistics;

/// <summary>Weights and working values that depend on the curve: the iterated part of a fit.</summary>
/// <remarks>
/// Proportional noise: weight 1/f². Two components: 1/((1 − g) + g f²/m), m being the mean of f² and g the share of the proportional part in the
/// mean variance. Logarithmic noise: weight 1/f² and working value f + f ln(y/f), which makes each step one of Gauss and Newton for the sum of
/// (ln y − ln f)².
/// </remarks>
internal readonly ref struct DecayReweighting
{
    /// <summary>A curve is not taken as closer to zero than this part of the largest value, where its weight would be without bound.</summary>
    private const double SmallestShareProportional = 1e-3;

    private const double SmallestShareLogarithmic = 1e-9;

    private readonly ReadOnlySpan<double> times;
    private readonly ReadOnlySpan<double> values;
    private readonly ReadOnlySpan<double> given;
    private readonly DecayNoise noise;
    private readonly double least;
    private readonly Span<double> share;

    public DecayReweighting(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> given,
        DecayNoise noise,
        Span<double> scratch
    )
    {
        this.times = times;
        this.values = values;
        this.given = given;
        this.noise = noise;
        var count = times.Length;
        Weights = scratch.Slice(0, count);
        Values = scratch.Slice(count, count);
        share = scratch.Slice(2 * count, 3);
        share.Clear();
        double largest = 0;
        foreach (var value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        least =
            (noise == DecayNoise.Logarithmic ? SmallestShareLogarithmic : SmallestShareProportional)
            * (largest > 0 ? largest : 1);
    }

    /// <summary>Doubles of scratch space that a series needs.</summary>
    public static int Scratch(int count) => 2 * count + 3;

    public Span<double> Weights { get; }
    public Span<double> Values { get; }

    /// <summary>Share of the proportional part in the mean variance, of two components.</summary>
    public double ProportionalShare
    {
        get => share[0];
        set => share[0] = value;
    }

    /// <summary>Variance of a reading over the mean one where the curve stands at f: this and <see cref="PerSquare"/> f².</summary>
    public double ConstantPart => share[1];

    public double PerSquare => share[2];

    /// <summary>The readings themselves stand for the curve: close enough to start from. Not for two components, whose curve is at hand.</summary>
    public void Begin()
    {
        for (var i = 0; i < times.Length; i++)
        {
            Weights[i] = Given(i) * NoiseWeight(values[i]);
            Values[i] = values[i];
        }
    }

    public void Update(in DecayCurve curve)
    {
        if (noise == DecayNoise.TwoComponent)
        {
            SetShares(curve);
        }

        for (var i = 0; i < times.Length; i++)
        {
            var f = curve.At(times[i]);
            Weights[i] = Given(i) * NoiseWeight(f);
            if (noise == DecayNoise.Logarithmic)
            {
                f = Math.Max(f, least);
                Values[i] = f + f * Math.Log(values[i] / f);
            }
            else
            {
                Values[i] = values[i];
            }
        }
    }

    /// <summary>What logarithmic noise makes as small as possible.</summary>
    public double LogarithmicSumOfSquares(in DecayCurve curve)
    {
        double sum = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var r = Math.Log(values[i] / Math.Max(curve.At(times[i]), least));
            sum += Given(i) * r * r;
        }

        return sum;
    }

    private double NoiseWeight(double f)
    {
        if (noise == DecayNoise.Constant)
        {
            return 1;
        }

        var size = Math.Max(f, least);
        return noise == DecayNoise.TwoComponent ? 1 / (ConstantPart + PerSquare * size * size) : 1 / (size * size);
    }

    private void SetShares(in DecayCurve curve)
    {
        double squares = 0;
        double count = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var size = Math.Max(curve.At(times[i]), least);
            squares += Given(i) > 0 ? size * size : 0;
            count += Given(i) > 0 ? 1 : 0;
        }

        share[1] = 1 - share[0];
        share[2] = share[0] * count / squares;
    }

    private double Given(int i) => given.IsEmpty ? 1 : given[i];
}
