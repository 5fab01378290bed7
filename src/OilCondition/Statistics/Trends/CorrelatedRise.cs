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
internal readonly ref struct CorrelatedRise
{
    private const double Negligible = 1e-3;
    private const int MostSecants = 12;
    private const int MostHalvings = 60;

    /// <summary>Part of the width to which a quantile is worked out.</summary>
    private const double NextToNothing = 1e-7;
    private const double FarAway = 1e3;

    // One correlation with one course each, filled up to fours with nothing.
    private readonly RiseCells cells;
    private readonly int count;
    private readonly int freedom;
    private readonly double width;
    private readonly StudentSeries student;

    private CorrelatedRise(RiseCells cells, int freedom)
    {
        this.cells = cells;
        this.freedom = freedom;
        student = StudentSeries.For(freedom);
        count = cells.KeepThatMatter(Negligible);
        double scale2 = 0;
        for (var i = 0; i < count; i++)
        {
            Rise += cells.Weights[i] * cells.Rises[i];
            Correlation += cells.Weights[i] * cells.Correlations[i];
            scale2 += cells.Weights[i] * cells.Scatters[i];
        }

        double variance = 0;
        for (var i = 0; i < count; i++)
        {
            var off = cells.Rises[i] - Rise;
            variance += cells.Weights[i] * (cells.Variances[i] + off * off);
        }

        Scatter = Math.Sqrt(scale2);
        width = Math.Sqrt(variance);
    }

    /// <summary>Doubles that <see cref="Of"/> needs room for, at most.</summary>
    public static int Room => RiseCells.Columns * RiseDesign.MostCells;

    /// <summary>Mean rise from the first reading to the last.</summary>
    public double Rise { get; }

    /// <summary>Mean correlation of readings a mean interval apart.</summary>
    public double Correlation { get; }

    /// <summary>Standard deviation of the readings about their course.</summary>
    public double Scatter { get; }

    /// <summary>Probability of a rise as clear by chance alone: twice the chance that it goes the other way.</summary>
    public double TwoSidedChance
    {
        get
        {
            var below = ChanceBelow(0);
            return Math.Min(1, 2 * Math.Max(0, Math.Min(below, 1 - below)));
        }
    }

    /// <summary>Judges readings in order of time.</summary>
    /// <param name="design">When they were taken, and which season there may be beside the rise.</param>
    /// <param name="values">What was read; more values than there are parts to fit.</param>
    /// <param name="leastScatter">The least scatter that readings may be taken to have: equal rounded readings do not scatter by nothing.</param>
    /// <param name="room">Memory of <see cref="Room"/> that the rise stays in.</param>
    public static CorrelatedRise Of(
        RiseDesign design,
        ReadOnlySpan<double> values,
        double leastScatter,
        Span<double> room
    )
    {
        var least =
            1e-20 * Numbers.SumOfSquaresAbout(values, values[0])
            + 1e-290
            + design.DegreesOfFreedom * leastScatter * leastScatter;
        var read = new RiseCells(room, design.Cells);
        design.Read(values, least, read);
        return new CorrelatedRise(read, design.DegreesOfFreedom);
    }

    /// <summary>The chance that the rise is below a figure.</summary>
    public double ChanceBelow(double rise)
    {
        Lanes sum = default;
        var at = LaneMath.Of(rise);
        var weights = cells.Weights;
        var rises = cells.Rises;
        var variances = cells.Variances;
        if (student.IsShort)
        {
            for (var i = 0; i < count; i += LaneMath.Width)
            {
                var below = student.BeyondOfShort(LaneMath.Load(rises, i) - at, LaneMath.Load(variances, i));
                sum = LaneMath.MultiplyAdd(LaneMath.Load(weights, i), below, sum);
            }

            return LaneMath.Sum(sum);
        }

        for (var i = 0; i < count; i += LaneMath.Width)
        {
            var below = student.Beyond(LaneMath.Load(rises, i) - at, LaneMath.Load(variances, i));
            sum = LaneMath.MultiplyAdd(LaneMath.Load(weights, i), below, sum);
        }

        return LaneMath.Sum(sum);
    }

    /// <summary>The rise below which it lies with a chance.</summary>
    public double Quantile(double chance)
    {
        // The logarithm of the odds is nearly straight about the quantile, which the secants of it soon find.
        var wanted = LogOdds(chance);
        var t = StudentDistribution.Quantile(chance, freedom);
        var (before, now) = (Rise + 0.8 * t * width, Rise + t * width);
        var (last, odds) = (LogOdds(ChanceBelow(before)) - wanted, LogOdds(ChanceBelow(now)) - wanted);
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

            (before, last, now, odds) = (now, odds, next, LogOdds(ChanceBelow(next)) - wanted);
        }

        return Halved(chance);
    }

    private static double LogOdds(double chance) => Math.Log(chance / (1 - chance));

    /// <summary>The same where secants lead nowhere.</summary>
    private double Halved(double chance)
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

        for (var i = 0; i < MostHalvings; i++)
        {
            var middle = low + (high - low) / 2;
            (low, high) = ChanceBelow(middle) < chance ? (middle, high) : (low, middle);
        }

        return high;
    }
}
