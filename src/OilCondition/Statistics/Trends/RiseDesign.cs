using System.Buffers;

namespace OilCondition.Statistics;

/// <summary>A rise over the dates of some readings, under each correlation and course that <see cref="CorrelatedRise"/> weighs: all that does not depend on what was read.</summary>
/// <remarks>Its memory is rented: whoever has no more use of it gives it back by <see cref="Release"/>.</remarks>
internal sealed class RiseDesign
{
    private const int MostOnStack = 128;

    /// <summary>Columns of a season.</summary>
    private const int Season = 2;

    // A season that less than two cycles do not show may be there: in three of ten series, its columns of a standard deviation of 2.5 scatters.
    private const double SeasonChance = 0.3;
    private const double SeasonVariance = 6;
    private static readonly double LogWithSeason = Math.Log(SeasonChance) - 0.5 * Season * Math.Log(SeasonVariance);
    private static readonly double LogWithoutSeason = Math.Log(1 - SeasonChance);

    private static readonly (Course Course, double LogWeight)[] Courses =
    [
        (Course.Straight, Math.Log(0.8)),
        (Course.Exponential(3), Math.Log(0.08)),
        (Course.Exponential(8), Math.Log(0.08)),
        (Course.Exponential(-4), Math.Log(0.04)),
    ];

    private readonly CorrelatedDates dates;
    private readonly double? period;

    // Columns of all fits: of the season, and 1.
    private readonly int common;

    // For each four correlations: the columns freed of what the reading before foretells, the triangle of their products, and for each course what its
    // likelihood has beside the squares that it leaves. Then room for readings.
    private readonly Lanes[] rented;
    private readonly int ofFour;

    // Where there only may be a season, the rise without it, which has all columns but those of the season. It keeps the rise with it.
    private readonly RiseDesign? without;
    private RiseDesign? inDoubt;

    /// <summary>A rise, alone or beside a season of free size.</summary>
    /// <param name="times">When readings were taken; ascending, at two different times or more.</param>
    /// <param name="period">Period of the season; null for none.</param>
    public RiseDesign(double[] times, double? period = null)
        : this(new CorrelatedDates(times), period, null) { }

    private RiseDesign(CorrelatedDates dates, double? period, RiseDesign? without)
    {
        (this.dates, this.period, this.without) = (dates, period, without);
        common = period is null ? 1 : Season + 1;
        DegreesOfFreedom = without?.DegreesOfFreedom ?? dates.Times.Length - common - 1;
        ofFour = OwnColumns * dates.Times.Length + GramColumns.Room(common, Courses.Length) + Courses.Length;
        rented = ArrayPool<Lanes>.Shared.Rent(CorrelatedDates.Fours * ofFour + dates.Times.Length);
        FillColumns();
        for (var four = 0; four < CorrelatedDates.Fours; four++)
        {
            Factor(four);
        }
    }

    /// <summary>Readings less what is fitted.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>The most pairs of a correlation and a course that there are.</summary>
    public static int MostCells => 2 * OwnCells;

    /// <summary>How many pairs of a correlation and a course there are, with a season and without.</summary>
    public int Cells => without is null ? OwnCells : 2 * OwnCells;

    private static int OwnCells => CorrelatedDates.Fours * Courses.Length * LaneMath.Width;

    private int Columns => common + Courses.Length;

    private int OwnColumns => without is null ? Columns : Season;

    /// <summary>Whether it is of these dates and this season.</summary>
    public bool IsOf(ReadOnlySpan<double> times, double? cycle) =>
        cycle.Equals(period) && times.SequenceEqual(dates.Times);

    /// <summary>This rise where there may be a season that the readings are too short to show.</summary>
    /// <param name="cycle">Period of the season.</param>
    public RiseDesign InDoubtOf(double cycle)
    {
        if (inDoubt is null || !cycle.Equals(inDoubt.period))
        {
            inDoubt?.Return();
            inDoubt = new RiseDesign(dates, cycle, this);
        }

        return inDoubt;
    }

    /// <summary>Gives the memory back, with that of the rise in doubt: nothing may be asked any more.</summary>
    public void Release()
    {
        inDoubt?.Return();
        Return();
        dates.Release();
    }

    /// <summary>Reads the readings under each correlation and course.</summary>
    /// <param name="values">What was read.</param>
    /// <param name="least">Least sum of squares.</param>
    /// <param name="cells">Room for <see cref="Cells"/>.</param>
    public void Read(ReadOnlySpan<double> values, double least, in RiseCells cells)
    {
        Span<Lanes> products = stackalloc Lanes[Columns];
        var freed = rented.AsSpan(CorrelatedDates.Fours * ofFour, values.Length);

        // About their mean, so that their squares keep their digits.
        var mean = Numbers.Mean(values);
        for (var four = 0; four < CorrelatedDates.Fours; four++)
        {
            dates.Free(four, values, mean, freed);
            for (var j = 0; j < products.Length; j++)
            {
                products[j] = Product(freed, Column(four, j));
            }

            var squares = Product(freed, freed);
            Weigh(four, products, squares, least, without is null ? 0 : LogWithSeason, cells, 0);
            without?.Weigh(four, products[Season..], squares, least, LogWithoutSeason, cells, OwnCells);
        }
    }

    /// <summary>Fits each course at four correlations.</summary>
    private void Weigh(
        int four,
        ReadOnlySpan<Lanes> products,
        Lanes squares,
        double least,
        double logChance,
        in RiseCells cells,
        int from
    )
    {
        Span<GramFit> fits = stackalloc GramFit[Courses.Length];
        Gram(four).Fit(products, squares, fits);
        var at = from + four * fits.Length * LaneMath.Width;
        var overFreedom = LaneMath.Of(1.0 / DegreesOfFreedom);
        var halfFreedom = LaneMath.Of(0.5 * DegreesOfFreedom);
        for (var c = 0; c < fits.Length; c++, at += LaneMath.Width)
        {
            var left = LaneMath.Max(LaneMath.Of(least), fits[c].Left);
            var scale2 = left * overFreedom;
            var log = LogWeights(four)[c] + LaneMath.Of(logChance) - halfFreedom * LaneMath.Log(left);
            LaneMath.Store(log, cells.Weights, at);
            LaneMath.Store(fits[c].Coefficient, cells.Rises, at);
            LaneMath.Store(scale2 * fits[c].Variance, cells.Variances, at);
            LaneMath.Store(scale2, cells.Scatters, at);
            LaneMath.Store(CorrelatedDates.Correlation(four), cells.Correlations, at);
        }
    }

    private void FillColumns()
    {
        var n = dates.Times.Length;
        var column = n <= MostOnStack ? stackalloc double[n] : new double[n];
        for (var j = 0; j < OwnColumns; j++)
        {
            Fill(j, column);
            for (var four = 0; four < CorrelatedDates.Fours; four++)
            {
                dates.Free(four, column, 0, Column(four, j));
            }
        }
    }

    /// <summary>A column as it is: the season, 1, then each course.</summary>
    private void Fill(int j, Span<double> column)
    {
        var times = dates.Times;
        var span = times[times.Length - 1] - times[0];
        for (var i = 0; i < column.Length; i++)
        {
            column[i] =
                j >= common ? Courses[j - common].Course.At((times[i] - times[0]) / span)
                : j == common - 1 ? 1
                : j == 0 ? Math.Cos(2 * Math.PI * times[i] / period!.Value)
                : Math.Sin(2 * Math.PI * times[i] / period!.Value);
        }
    }

    /// <summary>Makes the triangle and the weights of the courses at four correlations.</summary>
    private void Factor(int four)
    {
        Span<Lanes> products = stackalloc Lanes[Columns * Columns];
        for (var j = 0; j < Columns; j++)
        {
            var column = Column(four, j);
            for (var k = 0; k <= j; k++)
            {
                products[j * Columns + k] = Product(column, Column(four, k));
            }
        }

        var gram = Gram(four);
        gram.Factor(products, without is null ? 0 : Season, 1 / SeasonVariance);
        for (var c = 0; c < Courses.Length; c++)
        {
            LogWeights(four)[c] =
                dates.LogWeight(four)
                + LaneMath.Of(Courses[c].LogWeight)
                + LaneMath.Log(gram.RootOfInverseDeterminant(c));
        }
    }

    private static Lanes Product(ReadOnlySpan<Lanes> one, ReadOnlySpan<Lanes> other)
    {
        Lanes sum = default;
        for (var i = 0; i < one.Length; i++)
        {
            sum = LaneMath.MultiplyAdd(one[i], other[i], sum);
        }

        return sum;
    }

    private Span<Lanes> Column(int four, int j) =>
        j < OwnColumns
            ? rented.AsSpan(four * ofFour + j * dates.Times.Length, dates.Times.Length)
            : without!.Column(four, j - Season);

    private GramColumns Gram(int four) =>
        new(
            rented.AsSpan(four * ofFour + OwnColumns * dates.Times.Length, GramColumns.Room(common, Courses.Length)),
            common,
            Courses.Length
        );

    private Span<Lanes> LogWeights(int four) => rented.AsSpan((four + 1) * ofFour - Courses.Length, Courses.Length);

    private void Return() => ArrayPool<Lanes>.Shared.Return(rented);
}
