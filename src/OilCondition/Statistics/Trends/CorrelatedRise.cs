using System.Runtime.InteropServices;
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
    private const double NoCorrelation = 27;
    private const double Negligible = 1e-3;

    // A season that less than two cycles do not show may be there: in three of ten series, its columns of a standard deviation of 2.5 scatters.
    private const double SeasonChance = 0.3;
    private const double SeasonVariance = 6;

    /// <summary>−ln ρ of no correlation: nothing is left of it over the shortest time.</summary>
    private const double AtOnce = 1e300;

    /// <summary>Four at a time; the last one only fills up, without a weight.</summary>
    private static readonly double[] Correlations = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.95];
    private static readonly double[] Decays = Array.ConvertAll(Correlations, rho => rho > 0 ? -Math.Log(rho) : AtOnce);
    private static readonly double[] LogPriors =
    [
        Math.Log(NoCorrelation),
        .. Correlations.Skip(1).Take(10).Select(rho => -0.5 * Math.Log(1.02 - rho)),
        double.NegativeInfinity,
    ];

    private static readonly (Course Course, double LogWeight)[] Courses =
    [
        (Course.Straight, Math.Log(0.8)),
        (Course.Exponential(3), Math.Log(0.08)),
        (Course.Exponential(8), Math.Log(0.08)),
        (Course.Exponential(-4), Math.Log(0.04)),
    ];

    // One correlation with one course each, in columns, filled up to fours with nothing: weight, rise, and one over its standard error.
    private readonly double[] weights;
    private readonly double[] rises;
    private readonly double[] precisions;
    private readonly double width;
    private readonly StudentSeries student;

    private CorrelatedRise(ReadOnlySpan<Cell> cells, double best, int degreesOfFreedom)
    {
        DegreesOfFreedom = degreesOfFreedom;
        student = StudentSeries.For(degreesOfFreedom);
        var room = (cells.Length + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;
        (weights, rises, precisions) = (new double[room], new double[room], new double[room]);
        double sum = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            weights[i] = Math.Exp(cells[i].LogWeight - best);
            sum += weights[i];
        }

        double scale2 = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            weights[i] /= sum;
            rises[i] = cells[i].Rise;
            precisions[i] = 1 / cells[i].Error;
            Rise += weights[i] * cells[i].Rise;
            Correlation += weights[i] * cells[i].Correlation;
            scale2 += weights[i] * cells[i].Scale2;
        }

        double variance = 0;
        for (var i = 0; i < cells.Length; i++)
        {
            var off = cells[i].Rise - Rise;
            variance += weights[i] * (cells[i].Error * cells[i].Error + off * off);
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
    /// <param name="times">When; ascending, at two different times or more.</param>
    /// <param name="values">What; n values, more than there are parts to fit.</param>
    /// <param name="season">Columns of a season, each n long; empty for none.</param>
    /// <param name="isSeasonFound">Whether the season was found and its size is free; otherwise it only may be there.</param>
    /// <param name="leastScatter">The least scatter that readings may be taken to have: equal rounded readings do not scatter by nothing.</param>
    public static CorrelatedRise Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double[][] season,
        bool isSeasonFound = true,
        double leastScatter = 0
    )
    {
        // Columns: the season, 1, each course, the readings; their products once for each correlation, a fit's own part of them once for each course.
        var n = times.Length;
        var m = season.Length + Courses.Length + 2;
        var design = Rows(times, values, season, m);
        var interval = MeanInterval(times);
        var freedom = n - 2 - (isSeasonFound ? season.Length : 0);
        var least =
            1e-20 * Numbers.SumOfSquaresAbout(values, values[0]) + 1e-290 + freedom * leastScatter * leastScatter;
        Span<Lanes> products = stackalloc Lanes[m * m];
        Span<double> logs = stackalloc double[LaneMath.Width];
        var mayHaveSeason = season.Length > 0 && !isSeasonFound;
        var all = new Cells(Correlations.Length * Courses.Length * (mayHaveSeason ? 2 : 1), freedom, least);
        var withSeason = new GramColumns(season.Length + 3, m);
        var withoutSeason = mayHaveSeason ? new GramColumns(3, m) : withSeason;
        for (var four = 0; four < Correlations.Length; four += LaneMath.Width)
        {
            Whitened(design, times, LaneMath.Load(Decays, four), interval, products, logs);
            for (var c = 0; c < Courses.Length; c++)
            {
                if (mayHaveSeason)
                {
                    withoutSeason.Take(products, season.Length, season.Length, 0, season.Length + 1 + c, m - 1);
                    all.Add(withoutSeason, four, Courses[c].LogWeight + Math.Log(1 - SeasonChance), logs);
                }

                withSeason.Take(
                    products,
                    0,
                    season.Length,
                    mayHaveSeason ? 1 / SeasonVariance : 0,
                    season.Length + 1 + c,
                    m - 1
                );
                var known = mayHaveSeason ? Math.Log(SeasonChance) - 0.5 * season.Length * Math.Log(SeasonVariance) : 0;
                all.Add(withSeason, four, Courses[c].LogWeight + known, logs);
            }
        }

        return new CorrelatedRise(all.ThatMatter(out var best), best, freedom);
    }

    /// <summary>The chance that the rise is below a figure.</summary>
    public double ChanceBelow(double rise)
    {
        Lanes sum = default;
        for (var i = 0; i < weights.Length; i += LaneMath.Width)
        {
            var off = (LaneMath.Of(rise) - LaneMath.Load(rises, i)) * LaneMath.Load(precisions, i);
            sum = LaneMath.MultiplyAdd(LaneMath.Load(weights, i), student.Below(off), sum);
        }

        return LaneMath.Sum(sum);
    }

    /// <summary>The rise below which it lies with a chance.</summary>
    public double Quantile(double chance)
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

    /// <summary>The columns side by side, a row a reading.</summary>
    private static double[] Rows(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double[][] season, int m)
    {
        var n = times.Length;
        var rows = new double[n * m];

        // About their mean, so that their squares keep their digits.
        var mean = Numbers.Mean(values);
        for (var i = 0; i < n; i++)
        {
            var row = rows.AsSpan(i * m, m);
            for (var j = 0; j < season.Length; j++)
            {
                row[j] = season[j][i];
            }

            row[season.Length] = 1;
            var part = (times[i] - times[0]) / (times[n - 1] - times[0]);
            for (var c = 0; c < Courses.Length; c++)
            {
                row[1 + season.Length + c] = Courses[c].Course.At(part);
            }

            row[m - 1] = values[i] - mean;
        }

        return rows;
    }

    private static double MeanInterval(ReadOnlySpan<double> times)
    {
        var intervals = 0;
        for (var i = 1; i < times.Length; i++)
        {
            intervals += times[i] > times[i - 1] ? 1 : 0;
        }

        return (times[times.Length - 1] - times[0]) / intervals;
    }

    /// <summary>Products of all columns once each reading has been freed of what the one before it foretells, and −½ ln|V|, for four correlations.</summary>
    private static void Whitened(
        ReadOnlySpan<double> rows,
        ReadOnlySpan<double> times,
        Lanes decay,
        double interval,
        Span<Lanes> products,
        Span<double> logs
    )
    {
        var m = rows.Length / times.Length;
        products.Clear();
        logs.Clear();
        Span<Lanes> row = stackalloc Lanes[m];
        var one = LaneMath.Of(1);
        var lastGap = -1.0;
        Lanes follows = default;
        var scale = one;
        var product = one;
        for (var i = 0; i < times.Length; i++)
        {
            var gap = i > 0 ? times[i] - times[i - 1] : 0;
            if (Math.Abs(gap - lastGap) > 1e-9 * interval)
            {
                // ρ to the power of the distance, and one over the root of 1 − its square; at one time nothing follows.
                lastGap = gap;
                var lost = LaneMath.Of(Math.Max(0, gap) / interval) * decay;
                follows = gap > 0 ? one - LaneMath.Drop(lost) : default;
                scale = gap > 0 ? one / LaneMath.Sqrt(LaneMath.Drop(lost + lost)) : one;
            }

            product *= scale;
            if (LaneMath.Largest(product) > 1e200)
            {
                AddLogs(product, logs);
                product = one;
            }

            var now = rows.Slice(i * m, m);
            var before = rows.Slice(Math.Max(0, i - 1) * m, m);
            for (var j = 0; j < m; j++)
            {
                var of = scale * (LaneMath.Of(now[j]) - follows * LaneMath.Of(before[j]));
                row[j] = of;
                var sums = products.Slice(j * m, j + 1);
                for (var k = 0; k < sums.Length; k++)
                {
                    sums[k] = LaneMath.MultiplyAdd(of, row[k], sums[k]);
                }
            }
        }

        AddLogs(product, logs);
    }

    private static void AddLogs(Lanes product, Span<double> logs)
    {
        Span<double> four = stackalloc double[LaneMath.Width];
        LaneMath.Store(product, four, 0);
        for (var i = 0; i < four.Length; i++)
        {
            logs[i] += Math.Log(four[i]);
        }
    }

    /// <summary>One correlation with one course.</summary>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Cell(double LogWeight, double Rise, double Error, double Correlation, double Scale2);

    /// <summary>The cells while they are gathered.</summary>
    private sealed class Cells(int room, int freedom, double least)
    {
        private readonly Cell[] all = new Cell[room];
        private int count;

        /// <summary>Takes the fits of one course at four correlations.</summary>
        public void Add(GramColumns part, int from, double log, ReadOnlySpan<double> logs)
        {
            Span<double> four = stackalloc double[4 * LaneMath.Width];
            LaneMath.Store(part.SumOfSquares, four, 0);
            LaneMath.Store(part.Determinant, four, LaneMath.Width);
            LaneMath.Store(part.LastCoefficient, four, 2 * LaneMath.Width);
            LaneMath.Store(part.LastVariance, four, 3 * LaneMath.Width);
            for (var i = 0; i < LaneMath.Width; i++)
            {
                var squares = Math.Max(four[i], least);
                var scale2 = squares / freedom;
                all[count++] = new Cell(
                    LogPriors[from + i]
                        + log
                        + logs[i]
                        - 0.5 * (Math.Log(four[LaneMath.Width + i]) + freedom * Math.Log(squares)),
                    four[2 * LaneMath.Width + i],
                    Math.Sqrt(scale2 * four[3 * LaneMath.Width + i]),
                    Correlations[from + i],
                    scale2
                );
            }
        }

        /// <summary>Those that are not negligible beside the likeliest.</summary>
        public ReadOnlySpan<Cell> ThatMatter(out double best)
        {
            best = double.NegativeInfinity;
            foreach (var cell in all)
            {
                best = Math.Max(best, cell.LogWeight);
            }

            var lowest = best + Math.Log(Negligible);
            var kept = 0;
            foreach (var cell in all)
            {
                if (cell.LogWeight >= lowest)
                {
                    all[kept++] = cell;
                }
            }

            return all.AsSpan(0, kept);
        }
    }
}
