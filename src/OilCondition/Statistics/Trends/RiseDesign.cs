namespace OilCondition.Statistics;

/// <summary>The dates of some readings under each correlation and course that <see cref="CorrelatedRise"/> weighs: all that does not depend on what was read.</summary>
internal sealed class RiseDesign
{
    private const double NoCorrelation = 27;

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

    private readonly double[] times;
    private readonly double? period;
    private readonly bool isSeasonFound;
    private readonly int columns;
    private readonly Correlated[] correlated;

    /// <summary>The dates of readings.</summary>
    /// <param name="times">When; ascending, at two different times or more.</param>
    /// <param name="period">Period of a season beside the rise; null for none.</param>
    /// <param name="isSeasonFound">Whether the season was found and its size is free; otherwise it only may be there.</param>
    public RiseDesign(double[] times, double? period = null, bool isSeasonFound = true)
    {
        (this.times, this.period, this.isSeasonFound) = (times, period, isSeasonFound);
        double[][] season = period is { } one ? SeasonalCycle.Columns(times, one) : [];

        // Columns: the season, 1, each course.
        columns = season.Length + Courses.Length + 1;
        DegreesOfFreedom = times.Length - 2 - (isSeasonFound ? season.Length : 0);
        var rows = Rows(times, season, columns);
        var interval = MeanInterval(times);
        var mayHaveSeason = season.Length > 0 && !isSeasonFound;
        correlated = new Correlated[Correlations.Length / LaneMath.Width];
        for (var four = 0; four < correlated.Length; four++)
        {
            correlated[four] = new Correlated(rows, times, four, interval, columns);
            correlated[four].Factor(season.Length, mayHaveSeason, DegreesOfFreedom);
        }
    }

    /// <summary>Readings less what is fitted.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>How many pairs of a correlation and a course there are, a season or none beside them.</summary>
    public int Cells => correlated.Length * correlated[0].Fits.Length * LaneMath.Width;

    /// <summary>Whether it is of these dates and this season.</summary>
    public bool IsOf(ReadOnlySpan<double> dates, double? cycle, bool isFound) =>
        cycle.Equals(period) && isFound == isSeasonFound && dates.SequenceEqual(times);

    /// <summary>Reads the readings under each correlation and course.</summary>
    /// <param name="values">What was read.</param>
    /// <param name="least">Least sum of squares.</param>
    /// <param name="cells">Room for <see cref="Cells"/>.</param>
    public void Read(ReadOnlySpan<double> values, double least, in RiseCells cells)
    {
        // About their mean, so that their squares keep their digits.
        var mean = Numbers.Mean(values);
        Span<Lanes> products = stackalloc Lanes[columns];
        var at = 0;
        foreach (var four in correlated)
        {
            var squares = four.Products(values, mean, products);
            foreach (var fit in four.Fits)
            {
                var left = LaneMath.Max(LaneMath.Of(least), fit.Columns.Fit(products, squares, out var rise));
                var scale2 = left / LaneMath.Of(DegreesOfFreedom);
                var log = fit.LogWeight - LaneMath.Of(0.5 * DegreesOfFreedom) * LaneMath.Log(left);
                LaneMath.Store(log, cells.LogWeights, at);
                LaneMath.Store(rise, cells.Rises, at);
                LaneMath.Store(scale2 * fit.Columns.LastVariance, cells.Variances, at);
                LaneMath.Store(scale2, cells.Scatters, at);
                LaneMath.Store(four.Correlation, cells.Correlations, at);
                at += LaneMath.Width;
            }
        }
    }

    /// <summary>The columns side by side, a row a reading.</summary>
    private static double[] Rows(ReadOnlySpan<double> times, double[][] season, int columns)
    {
        var n = times.Length;
        var rows = new double[n * columns];
        for (var i = 0; i < n; i++)
        {
            var row = rows.AsSpan(i * columns, columns);
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

    /// <summary>One course, with or without a season, at four correlations; what its likelihood has beside the squares that it leaves.</summary>
    private sealed record Fitted(GramColumns Columns, Lanes LogWeight);

    /// <summary>The columns under four correlations, each reading freed of what the one before it foretells.</summary>
    private sealed class Correlated
    {
        private readonly int four;
        private readonly int columns;

        // For each reading what is kept of it, what is taken of the one before it, and the columns.
        private readonly Lanes[] rows;

        public Correlated(
            ReadOnlySpan<double> design,
            ReadOnlySpan<double> times,
            int four,
            double interval,
            int columns
        )
        {
            this.four = four;
            this.columns = columns;
            Correlation = LaneMath.Load(Correlations, four * LaneMath.Width);
            rows = new Lanes[times.Length * (columns + 2)];
            var decay = LaneMath.Load(Decays, four * LaneMath.Width);
            var one = LaneMath.Of(1);
            var lastGap = -1.0;
            Lanes follows = default;
            var scale = one;
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

                LogDeterminant += LaneMath.Log(scale);
                var row = rows.AsSpan(i * (columns + 2), columns + 2);
                var now = design.Slice(i * columns, columns);
                var before = design.Slice(Math.Max(0, i - 1) * columns, columns);
                (row[0], row[1]) = (scale, scale * follows);
                for (var j = 0; j < columns; j++)
                {
                    row[j + 2] = row[0] * LaneMath.Of(now[j]) - row[1] * LaneMath.Of(before[j]);
                }
            }
        }

        public Lanes Correlation { get; }

        public Fitted[] Fits { get; private set; } = [];

        /// <summary>−½ ln|V|.</summary>
        private Lanes LogDeterminant { get; }

        /// <summary>Makes the fit of each course.</summary>
        public void Factor(int season, bool mayHaveSeason, int freedom)
        {
            Span<Lanes> products = stackalloc Lanes[columns * columns];
            products.Clear();
            for (var at = 0; at < rows.Length; at += columns + 2)
            {
                var row = rows.AsSpan(at + 2, columns);
                for (var j = 0; j < columns; j++)
                {
                    for (var k = 0; k <= j; k++)
                    {
                        products[j * columns + k] = LaneMath.MultiplyAdd(row[j], row[k], products[j * columns + k]);
                    }
                }
            }

            var known = mayHaveSeason ? Math.Log(SeasonChance) - 0.5 * season * Math.Log(SeasonVariance) : 0;
            var ridge = mayHaveSeason ? 1 / SeasonVariance : 0;
            Fits = new Fitted[mayHaveSeason ? 2 * Courses.Length : Courses.Length];
            for (var c = 0; c < Courses.Length; c++)
            {
                var log = Courses[c].LogWeight;
                var with = new GramColumns(products, columns, 0, season, ridge, season + 1 + c);
                Fits[c] = Weighed(with, log + known);
                if (mayHaveSeason)
                {
                    var without = new GramColumns(products, columns, season, season, 0, season + 1 + c);
                    Fits[Courses.Length + c] = Weighed(without, log + Math.Log(1 - SeasonChance));
                }
            }
        }

        /// <summary>The products of the columns with readings, which are freed as they are.</summary>
        /// <returns>The sum of squares of the readings.</returns>
        public Lanes Products(ReadOnlySpan<double> values, double mean, Span<Lanes> products)
        {
            products.Clear();
            Lanes squares = default;
            var before = LaneMath.Of(values[0] - mean);
            for (var i = 0; i < values.Length; i++)
            {
                var row = rows.AsSpan(i * (columns + 2), columns + 2);
                var now = LaneMath.Of(values[i] - mean);
                var freed = row[0] * now - row[1] * before;
                before = now;
                squares = LaneMath.MultiplyAdd(freed, freed, squares);
                for (var j = 0; j < products.Length; j++)
                {
                    products[j] = LaneMath.MultiplyAdd(freed, row[j + 2], products[j]);
                }
            }

            return squares;
        }

        private Fitted Weighed(GramColumns fit, double log) =>
            new(
                fit,
                LaneMath.Load(LogPriors, four * LaneMath.Width)
                    + LaneMath.Of(log)
                    + LogDeterminant
                    - LaneMath.Of(0.5) * LaneMath.Log(fit.Determinant)
            );
    }
}
