namespace OilCondition.Statistics;

/// <summary>Weights and working values that depend on the curve: the iterated part of a fit.</summary>
/// <remarks>
/// Proportional noise: weight 1/f². Logarithmic noise: weight 1/f² and working value f + f ln(y/f), which makes each step one of
/// Gauss and Newton for the sum of (ln y − ln f)². Robust: times Huber's weight (1.345 σ), later Tukey's biweight (4.685 σ), the constants
/// of 95 % efficiency (Holland and Welsch 1977), with σ from the median absolute residual.
/// </remarks>
internal readonly ref struct DecayReweighting
{
    public const double BiweightCutoff = 4.685;
    private const double HuberCutoff = 1.345;

    /// <summary>Median absolute value of a standard normal variable, Φ⁻¹(3/4).</summary>
    private const double NormalQuartile = 0.6744897501960817;

    /// <summary>A curve is not taken as closer to zero than this part of the largest value, where its weight would be without bound.</summary>
    private const double SmallestShareProportional = 1e-3;

    private const double SmallestShareLogarithmic = 1e-9;

    private readonly ReadOnlySpan<double> times;
    private readonly ReadOnlySpan<double> values;
    private readonly ReadOnlySpan<double> given;
    private readonly DecayNoise noise;
    private readonly double least;
    private readonly Span<double> sorted;
    private readonly Span<double> scale;

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
        Residuals = scratch.Slice(2 * count, count);
        sorted = scratch.Slice(3 * count, count);
        scale = scratch.Slice(4 * count, 1);
        scale[0] = 0;
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
    public static int Scratch(int count) => 4 * count + 1;

    public Span<double> Weights { get; }
    public Span<double> Values { get; }

    /// <summary>Residuals over their standard deviation but for a common factor, before robust weights.</summary>
    public Span<double> Residuals { get; }

    /// <summary>The readings themselves stand for the curve: close enough to start from.</summary>
    public void Begin()
    {
        for (var i = 0; i < times.Length; i++)
        {
            Weights[i] = Given(i) * NoiseWeight(values[i]);
            Values[i] = values[i];
        }
    }

    public void Update(in DecayCurve curve, RobustStage stage)
    {
        for (var i = 0; i < times.Length; i++)
        {
            var f = curve.At(times[i]);
            var weight = Given(i) * NoiseWeight(f);
            if (noise == DecayNoise.Logarithmic)
            {
                f = Math.Max(f, least);
                Values[i] = f + f * Math.Log(values[i] / f);
            }
            else
            {
                Values[i] = values[i];
            }

            Weights[i] = weight;
            Residuals[i] = Math.Sqrt(weight) * (Values[i] - f);
        }

        if (stage == RobustStage.Huber)
        {
            scale[0] = MedianScale();
        }

        if (stage == RobustStage.None || !(scale[0] > 0))
        {
            return;
        }

        for (var i = 0; i < times.Length; i++)
        {
            Weights[i] *=
                stage == RobustStage.Huber
                    ? HuberWeight(Residuals[i] / scale[0])
                    : BiweightWeight(Residuals[i] / scale[0]);
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

    /// <summary>Residual variance that turns (J'WJ)⁻¹ of the robust weights into a covariance: Huber's (1981, section 7.6) with his small-sample factor.</summary>
    public double RobustVariance(int counted, int fitted, double otherwise)
    {
        if (!(scale[0] > 0))
        {
            return otherwise;
        }

        double psi = 0;
        double slope = 0;
        double slopes = 0;
        double weight = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var r = Residuals[i] / scale[0];
            var share = BiweightWeight(r);
            var inside = 1 - r * r / (BiweightCutoff * BiweightCutoff);
            var derivative = inside > 0 ? inside * (1 - 5 * r * r / (BiweightCutoff * BiweightCutoff)) : 0;
            psi += r * share * r * share;
            slope += derivative;
            slopes += derivative * derivative;
            weight += share;
        }

        slope /= counted;
        weight /= counted;
        var spread = Math.Max(0, slopes / counted - slope * slope);
        if (!(slope > 0.1))
        {
            return otherwise;
        }

        var small = 1 + fitted * spread / (counted * slope * slope);
        return scale[0] * scale[0] * small * small * psi / (counted - fitted) * weight / (slope * slope);
    }

    private static double HuberWeight(double r) => Math.Abs(r) <= HuberCutoff ? 1 : HuberCutoff / Math.Abs(r);

    private static double BiweightWeight(double r)
    {
        var inside = 1 - r * r / (BiweightCutoff * BiweightCutoff);
        return inside > 0 ? inside * inside : 0;
    }

    private double NoiseWeight(double f)
    {
        if (noise == DecayNoise.Constant)
        {
            return 1;
        }

        var size = Math.Max(f, least);
        return 1 / (size * size);
    }

    private double Given(int i) => given.IsEmpty ? 1 : given[i];

    private double MedianScale()
    {
        var used = 0;
        for (var i = 0; i < times.Length; i++)
        {
            if (Given(i) > 0)
            {
                sorted[used++] = Math.Abs(Residuals[i]);
            }
        }

        Sorting.Ascending(sorted.Slice(0, used));
        var median = (sorted[(used - 1) / 2] + sorted[used / 2]) / 2;

        // A curve with three free parts passes close to some readings: n/(n − 3) undoes it on average.
        return median / NormalQuartile * Math.Sqrt(used / Math.Max(1.0, used - 3));
    }
}
