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

    private static readonly double[] Correlations = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95];

    private static readonly (Course Course, double Weight)[] Courses =
    [
        (Course.Straight, 0.8),
        (Course.Exponential(3), 0.08),
        (Course.Exponential(8), 0.08),
        (Course.Exponential(-4), 0.04),
    ];

    private readonly List<Cell> cells;

    // Room for one figure: the chances of all cells, four side by side.
    private readonly double[] chances;

    private CorrelatedRise(List<Cell> cells, double degreesOfFreedom)
    {
        this.cells = cells;
        chances = new double[(cells.Count + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width];
        DegreesOfFreedom = degreesOfFreedom;
        Rise = Mean(cell => cell.Rise);
        Correlation = Mean(cell => cell.Correlation);
        Scatter = Math.Sqrt(Mean(cell => cell.Scale2));
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
        var design = Columns(times, values, season);
        var interval = MeanInterval(times);
        var freedom = n - 2 - (isSeasonFound ? season.Length : 0);
        var least =
            1e-20 * Numbers.SumOfSquaresAbout(values, values[0]) + 1e-290 + freedom * leastScatter * leastScatter;
        var products = new double[design.Length * design.Length];
        var all = new List<Cell>(2 * Correlations.Length * Courses.Length);
        var best = double.NegativeInfinity;
        var withSeason = new GramColumns(season.Length + 3, design.Length);
        var withoutSeason = season.Length > 0 ? new GramColumns(3, design.Length) : withSeason;
        void Fit(GramColumns part, int from, double ridge, double correlation, double log)
        {
            for (var c = 0; c < Courses.Length; c++)
            {
                part.Take(products, from, season.Length, ridge, season.Length + 1 + c, design.Length - 1);
                var squares = Math.Max(part.SumOfSquares, least);
                var weight =
                    log + Math.Log(Courses[c].Weight) - 0.5 * (part.LogDeterminant + freedom * Math.Log(squares));
                best = Math.Max(best, weight);
                var scale2 = squares / freedom;
                all.Add(
                    new Cell(weight, part.LastCoefficient, Math.Sqrt(scale2 * part.LastVariance), correlation, scale2)
                );
            }
        }

        foreach (var correlation in Correlations)
        {
            var log =
                Whitened(design, times, correlation, interval, products)
                + (correlation > 0 ? -0.5 * Math.Log(1.02 - correlation) : Math.Log(NoCorrelation));
            if (season.Length == 0 || isSeasonFound)
            {
                Fit(withSeason, 0, 0, correlation, log);
                continue;
            }

            Fit(withoutSeason, season.Length, 0, correlation, log + Math.Log(1 - SeasonChance));
            Fit(
                withSeason,
                0,
                1 / SeasonVariance,
                correlation,
                log + Math.Log(SeasonChance) - 0.5 * season.Length * Math.Log(SeasonVariance)
            );
        }

        all.RemoveAll(cell => cell.Weight < best + Math.Log(Negligible));
        var sum = all.Sum(cell => Math.Exp(cell.Weight - best));
        return new CorrelatedRise(
            all.ConvertAll(cell => cell with { Weight = Math.Exp(cell.Weight - best) / sum }),
            freedom
        );
    }

    /// <summary>The chance that the rise is below a figure.</summary>
    public double ChanceBelow(double rise)
    {
        for (var i = 0; i < cells.Count; i++)
        {
            chances[i] = (rise - cells[i].Rise) / cells[i].Error;
        }

        StudentSeries.For((int)DegreesOfFreedom).Below(chances, cells.Count);
        double sum = 0;
        for (var i = 0; i < cells.Count; i++)
        {
            sum += cells[i].Weight * chances[i];
        }

        return sum;
    }

    /// <summary>The rise below which it lies with a chance.</summary>
    public double Quantile(double chance)
    {
        var width = Math.Sqrt(Mean(cell => cell.Error * cell.Error + (cell.Rise - Rise) * (cell.Rise - Rise)));
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

    private static double[][] Columns(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double[][] season)
    {
        var n = times.Length;
        var columns = new double[season.Length + Courses.Length + 2][];
        season.CopyTo(columns, 0);
        columns[season.Length] = new double[n];
        columns[season.Length].AsSpan().Fill(1);
        for (var c = 0; c < Courses.Length; c++)
        {
            var column = new double[n];
            for (var i = 0; i < n; i++)
            {
                column[i] = Courses[c].Course.At((times[i] - times[0]) / (times[n - 1] - times[0]));
            }

            columns[1 + season.Length + c] = column;
        }

        // About their mean, so that their squares keep their digits.
        var mean = Numbers.Mean(values);
        columns[columns.Length - 1] = Array.ConvertAll(values.ToArray(), value => value - mean);
        return columns;
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

    /// <summary>Products of all columns once each reading has been freed of what the one before it foretells; returns −½ ln|V|.</summary>
    private static double Whitened(
        double[][] columns,
        ReadOnlySpan<double> times,
        double correlation,
        double interval,
        double[] products
    )
    {
        products.AsSpan().Clear();
        Span<double> row = stackalloc double[columns.Length];
        var (lastGap, follows, scale) = (-1.0, 0.0, 1.0);
        var product = 1.0;
        double logs = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var gap = i > 0 ? times[i] - times[i - 1] : 0;
            if (Math.Abs(gap - lastGap) > 1e-9 * interval)
            {
                lastGap = gap;
                follows =
                    gap <= 0 || correlation <= 0 ? 0
                    : Math.Abs(gap - interval) < 1e-9 * interval ? correlation
                    : Math.Pow(correlation, gap / interval);
                scale = 1 / Math.Sqrt(1 - follows * follows);
            }

            product *= scale;
            if (product > 1e200)
            {
                logs += Math.Log(product);
                product = 1;
            }

            for (var j = 0; j < columns.Length; j++)
            {
                var one = scale * (follows > 0 ? columns[j][i] - follows * columns[j][i - 1] : columns[j][i]);
                row[j] = one;
                var of = products.AsSpan(j * columns.Length, j + 1);
                for (var k = 0; k < of.Length; k++)
                {
                    of[k] += one * row[k];
                }
            }
        }

        return logs + Math.Log(product);
    }

    private double Mean(Func<Cell, double> of)
    {
        double sum = 0;
        foreach (var cell in cells)
        {
            sum += cell.Weight * of(cell);
        }

        return sum;
    }

    /// <summary>One correlation with one course; the weight is a logarithm until all are known.</summary>
    private readonly record struct Cell(double Weight, double Rise, double Error, double Correlation, double Scale2);
}
