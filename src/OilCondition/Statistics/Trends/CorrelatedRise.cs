using MathNet.Numerics.RootFinding;

namespace OilCondition.Statistics;

/// <summary>How far a series rises from its first reading to its last where each reading may resemble the one before it.</summary>
/// <remarks>
/// y = a + b g(u) + season + e, u the part of the time seen, g a <see cref="Course"/>, e a first-order autoregression: readings a mean interval apart are
/// correlated by ρ, others by ρ to the power of their distance in mean intervals, readings taken at one time not at all. Each ρ of a grid and each course has the
/// weight of its restricted likelihood, |V|^(−1/2) |X′V⁻¹X|^(−1/2) RSS^(−(n − p)/2) (Harville 1974), times a prior: 0.6 on no correlation, the rest as (1 − ρ)^(−1/2);
/// 0.8 on the straight course, the rest on rises that come late or level off, whose residuals about a line would pass for correlation. Given both, b is
/// Student's with n − p degrees of freedom, and the chance that it lies below a figure is the weighted mean (Box and Tiao 1973, section 2.5). The prior
/// was chosen on series without a trend, correlated by 0, 0.3 and 0.6, and on rises of 2 to 4 standard deviations; docs/quality.md has other ones.
/// </remarks>
internal sealed class CorrelatedRise
{
    private const double Negligible = 1e-3;
    private const int MostSecants = 12;

    /// <summary>Part of the width to which a quantile is worked out.</summary>
    private const double NextToNothing = 1e-7;
    private const double FarAway = 1e3;

    // One correlation with one course each, in columns, filled up to fours with nothing: weight, rise, and the square of its standard error.
    private readonly double[] weights;
    private readonly double[] rises;
    private readonly double[] variances;
    private readonly double width;
    private readonly StudentSeries student;

    private CorrelatedRise(in RiseCells cells, int degreesOfFreedom)
    {
        DegreesOfFreedom = degreesOfFreedom;
        student = StudentSeries.For(degreesOfFreedom);
        var count = cells.KeepThatMatter(Negligible);
        var room = (count + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;
        (weights, rises, variances) = (new double[room], new double[room], new double[room]);
        double scale2 = 0;
        for (var i = 0; i < count; i++)
        {
            (weights[i], rises[i], variances[i]) = (cells.LogWeights[i], cells.Rises[i], cells.Variances[i]);
            Rise += weights[i] * rises[i];
            Correlation += weights[i] * cells.Correlations[i];
            scale2 += weights[i] * cells.Scatters[i];
        }

        double variance = 0;
        for (var i = 0; i < count; i++)
        {
            var off = rises[i] - Rise;
            variance += weights[i] * (variances[i] + off * off);
        }

        Scatter = Math.Sqrt(scale2);
        width = Math.Sqrt(variance);
    }

    /// <summary>Mean rise from the first reading to the last.</summary>
    public double Rise { get; }

    /// <summary>Mean correlation of readings a mean interval apart.</summary>
    public double Correlation { get; }

    /// <summary>Standard deviation of the readings about their course.</summary>
    public double Scatter { get; }

    public double DegreesOfFreedom { get; }

    /// <summary>Probability of a rise as clear by chance alone: twice the chance that it goes the other way.</summary>
    public double TwoSidedChance
    {
        get
        {
            var below = ChanceBelow(0);
            return Math.Min(1, 2 * Math.Min(below, 1 - below));
        }
    }

    /// <summary>Judges readings in order of time.</summary>
    /// <param name="design">When they were taken, and which season there may be beside the rise.</param>
    /// <param name="values">What was read; more values than there are parts to fit.</param>
    /// <param name="leastScatter">The least scatter that readings may be taken to have: equal rounded readings do not scatter by nothing.</param>
    public static CorrelatedRise Of(RiseDesign design, ReadOnlySpan<double> values, double leastScatter = 0)
    {
        var freedom = design.DegreesOfFreedom;
        var least =
            1e-20 * Numbers.SumOfSquaresAbout(values, values[0]) + 1e-290 + freedom * leastScatter * leastScatter;
        var cells = new RiseCells(stackalloc double[RiseCells.Columns * design.Cells]);
        design.Read(values, least, cells);
        return new CorrelatedRise(cells, freedom);
    }

    /// <summary>The chance that the rise is below a figure.</summary>
    public double ChanceBelow(double rise)
    {
        Lanes sum = default;
        for (var i = 0; i < weights.Length; i += LaneMath.Width)
        {
            var below = student.Beyond(LaneMath.Load(rises, i) - LaneMath.Of(rise), LaneMath.Load(variances, i));
            sum = LaneMath.MultiplyAdd(LaneMath.Load(weights, i), below, sum);
        }

        return LaneMath.Sum(sum);
    }

    /// <summary>The rise below which it lies with a chance.</summary>
    public double Quantile(double chance)
    {
        // The logarithm of the odds is nearly straight about the quantile, which the secants of it soon find.
        double Odds(double rise)
        {
            var below = ChanceBelow(rise);
            return Math.Log(below / (1 - below)) - Math.Log(chance / (1 - chance));
        }

        var t = StudentDistribution.Quantile(chance, (int)DegreesOfFreedom);
        var (before, now) = (Rise + 0.8 * t * width, Rise + t * width);
        var (odds, last) = (Odds(now), Odds(before));
        for (var i = 0; i < MostSecants; i++)
        {
            var next = now - odds * (now - before) / (odds - last);
            if (Math.Abs(next - now) < NextToNothing * width)
            {
                return next;
            }

            if (!(Math.Abs(next - Rise) < FarAway * width))
            {
                break;
            }

            (before, last, now, odds) = (now, odds, next, Odds(next));
        }

        return Bracketed(chance);
    }

    private double Bracketed(double chance)
    {
        var (low, high) = (Rise - 4 * width, Rise + 4 * width);
        while (ChanceBelow(low) > chance)
        {
            low -= high - low;
        }

        while (ChanceBelow(high) < chance)
        {
            high += high - low;
        }

        return Brent.FindRoot(rise => ChanceBelow(rise) - chance, low, high, 1e-6 * (high - low), 200);
    }
}
