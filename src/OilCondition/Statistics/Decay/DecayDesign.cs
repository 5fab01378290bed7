namespace OilCondition.Statistics;

/// <summary>The derivatives of a fitted curve by its free parts, each reading over its scatter, and what the residuals leave beside them.</summary>
/// <remarks>
/// Columns are made orthonormal (Gram and Schmidt, twice), so that what one more column would explain is a product. With residuals r beside p columns of
/// n readings, a column z that is orthogonal to them has Student's t = z r / sqrt((r r − (z r)²)/(n − p − 1)); its square is the F test of one added
/// column (Seber and Wild 1989, Nonlinear Regression, section 5.3; Draper and Smith 1998; both from memory).
/// <para>
/// Residuals of a fit do not follow one another even where the scatter does not: with M = I − Q Q' and A half of both neighbours the lag-1 correlation r A r / r r
/// has the mean tr(MA)/(n − p) and a variance of 2 ((n − p) tr(MAMA) − tr(MA)²)/((n − p)² (n − p + 2)) (Durbin and Watson 1950; the bias is that of
/// Marriott and Pope 1954 and Kendall 1954; from memory). Exact for a linear model with normal scatter.
/// </para>
/// </remarks>
internal sealed class DecayDesign
{
    /// <summary>Below it the quick sum for Student's t loses its digits.</summary>
    private const double SmallByDifference = 1e-6;

    /// <summary>A column of which less is left beside the others is one of them.</summary>
    private const double Dependent = 1e-7;

    /// <summary>How many times faster than the fit a part that falls first is taken to be; 2.5 to 8 find about the same.</summary>
    private const double Faster = 4;

    /// <summary>A second fall so much slower than the fit is what hides in a level (chosen by simulation: 1/4 sees no level in short runs, 4 hides one).</summary>
    private const double Slower = 0.4;

    /// <summary>A dead time shows in the first readings only: its column falls within them.</summary>
    private const double MuchFaster = 8;

    /// <summary>Two columns more leave too little with fewer degrees of freedom.</summary>
    private const int FewestBesideWidened = 6;

    private readonly double[] exponents;

    /// <summary>e^−x of each.</summary>
    private readonly double[] remaining;
    private readonly double[] roots;
    private readonly double[] residuals;
    private readonly DecayParts parts;
    private readonly List<double[]> basis = [];
    private readonly double squares;

    /// <summary>The curve at its optimum.</summary>
    /// <param name="exponents">x = k (t − t_0) of each reading that counts, in order of time.</param>
    /// <param name="roots">Square root of the weight of each.</param>
    /// <param name="residuals">Reading less curve, times that root.</param>
    /// <param name="parts">Which parts were fitted.</param>
    public DecayDesign(double[] exponents, double[] roots, double[] residuals, DecayParts parts)
    {
        this.exponents = exponents;
        this.roots = roots;
        this.parts = parts;
        remaining = new double[exponents.Length];
        for (var i = 0; i < remaining.Length; i++)
        {
            remaining[i] = Math.Exp(-exponents[i]);
        }

        LogSize =
            AddTo(basis, parts.Start ? OfStart() : null)
            + AddTo(basis, parts.Floor ? OfFloor() : null)
            + AddTo(basis, parts.Rate ? OfRate() : null);
        this.residuals = Rest(basis, residuals);
        squares = Product(this.residuals, this.residuals);
    }

    /// <summary>Of the readings that count, of working values and weights in order of time; no weights are equal ones.</summary>
    public static DecayDesign Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in ExponentialDecay fit,
        ExponentialDecayOptions options
    )
    {
        var powers = new double[fit.Count];
        var weighing = new double[fit.Count];
        var rests = new double[fit.Count];
        var change = fit.Floor - fit.Start;
        var counted = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var weight = weights.IsEmpty ? 1 : weights[i];
            if (weight > 0)
            {
                powers[counted] = fit.Rate * (times[i] - fit.StartTime);
                weighing[counted] = Math.Sqrt(weight);
                rests[counted] = weighing[counted] * (values[i] - fit.Start - change * LaneMath.Drop(powers[counted]));
                counted++;
            }
        }

        return new DecayDesign(powers, weighing, rests, DecayParts.Of(fit.Status, options));
    }

    private int Degrees => residuals.Length - basis.Count;

    /// <summary>Sum of squares, degrees of freedom and size beside the two columns of the check of the course, where enough readings are left.</summary>
    /// <remarks>Scatter that is told beside a course that is contradicted would take what contradicts it for scatter.</remarks>
    public (double Squares, int Degrees, double LogSize) Widened()
    {
        if (Degrees < FewestBesideWidened)
        {
            return (squares, Degrees, LogSize);
        }

        List<double[]> wide = [.. basis];
        var logSize = LogSize + AddTo(wide, Second(Faster)) + AddTo(wide, Second(MuchFaster));
        var rest = Rest(wide, residuals);
        return (Product(rest, rest), residuals.Length - wide.Count, logSize);
    }

    /// <summary>Lag-1 correlation of the residuals less what independent scatter would show, in its standard deviations.</summary>
    public double LagOneDeviate
    {
        get
        {
            var degrees = Degrees;
            if (degrees < 2 || !(squares > 0))
            {
                return 0;
            }

            var neighbours = basis.ConvertAll(Neighbours);
            double trace = 0;
            var traceOfSquare = 0.5 * (residuals.Length - 1);
            for (var i = 0; i < basis.Count; i++)
            {
                trace -= Product(basis[i], neighbours[i]);
                traceOfSquare -= 2 * Product(neighbours[i], neighbours[i]);
                for (var j = 0; j < basis.Count; j++)
                {
                    var both = Product(basis[i], neighbours[j]);
                    traceOfSquare += both * both;
                }
            }

            var mean = trace / degrees;
            var variance = 2 * (degrees * traceOfSquare - trace * trace) / ((double)degrees * degrees * (degrees + 2));
            var lagOne = Product(residuals, Neighbours(residuals)) / squares;
            return variance > 0 ? (lagOne - mean) / Math.Sqrt(variance) : 0;
        }
    }

    /// <summary>Half the logarithm of the determinant of J'WJ, but for what depends on the units.</summary>
    public double LogSize { get; }

    /// <summary>The check of the course.</summary>
    /// <param name="status">
    /// Of the fit. Beside a straight line, the slowest curve there is, the rate's own column, which bends, says whether the fall speeds up.
    /// </param>
    /// <param name="falls">Whether the curve falls; a rising one departs with the other sign.</param>
    public CourseChances Course(ExponentialDecayStatus status, bool falls)
    {
        if (status == ExponentialDecayStatus.FasterThanSampling || Degrees < 2 || !(squares > 0))
        {
            return CourseChances.Untested;
        }

        return status == ExponentialDecayStatus.StraightLine
            ? new CourseChances(1, TailAbove(OfRate(), falls))
            : new CourseChances(TailAbove(Second(Faster), falls), TailAbove(Second(MuchFaster), !falls));
    }

    /// <summary>How far down the floor may lie where a second, slower fall is allowed beside the first; null where the readings do not tell.</summary>
    /// <remarks>One step of Gauss and Newton from the fit, and the error of the delta method there.</remarks>
    /// <param name="scatterQuantile">Student's quantile by degrees of freedom.</param>
    public double? FloorChange(Func<int, double> scatterQuantile)
    {
        if (!parts.Floor)
        {
            return 0;
        }

        if (Degrees < 2)
        {
            return null;
        }

        List<double[]> others = [];
        AddTo(others, parts.Start ? OfStart() : null);
        AddTo(others, parts.Rate ? OfRate() : null);
        AddTo(others, Second(Slower));
        var count = others.Count;
        var floor = Rest(others, OfFloor());
        var size = Product(floor, floor);
        AddTo(others, OfFloor());
        if (others.Count == count)
        {
            return null;
        }

        var left = Rest(others, residuals);
        var degrees = residuals.Length - others.Count;
        var error = Math.Sqrt(Product(left, left) / degrees / size);
        return Product(floor, residuals) / size - scatterQuantile(degrees) * error;
    }

    private double[] OfStart()
    {
        var column = new double[remaining.Length];
        for (var i = 0; i < column.Length; i++)
        {
            column[i] = roots[i] * remaining[i];
        }

        return column;
    }

    private double[] OfFloor()
    {
        var column = new double[remaining.Length];
        for (var i = 0; i < column.Length; i++)
        {
            column[i] = roots[i] * LaneMath.Drop(exponents[i]);
        }

        return column;
    }

    private double[] OfRate()
    {
        var column = new double[remaining.Length];
        for (var i = 0; i < column.Length; i++)
        {
            column[i] = roots[i] * exponents[i] * remaining[i];
        }

        return column;
    }

    /// <summary>A second fall beside the first; of a known start it takes its share, so that the start stays.</summary>
    private double[] Second(double faster)
    {
        var column = new double[remaining.Length];
        for (var i = 0; i < column.Length; i++)
        {
            column[i] = roots[i] * (Math.Exp(-faster * exponents[i]) - (parts.Start ? 0 : remaining[i]));
        }

        return column;
    }

    /// <summary>The chance that independent scatter gives an added column as much on one side; not a number where it is none.</summary>
    private double TailAbove(double[] column, bool positive)
    {
        var beside = Rest(basis, column);
        var size = Product(beside, beside);
        if (!(size > Dependent * Dependent * Product(column, column)))
        {
            return double.NaN;
        }

        // The residuals are orthogonal to the others: their product with the column is that with what is left of it.
        var share = Product(column, residuals) / Math.Sqrt(size);
        var degrees = Degrees - 1;
        var rest = Math.Max(squares - share * share, 1e-30 * squares);
        var t = (positive ? -1 : 1) * share / Math.Sqrt(rest / degrees);
        var chance = StudentDistribution.Below(t, degrees);
        return chance > SmallByDifference ? chance : StudentDistribution.Cumulative(t, degrees);
    }

    /// <summary>Adds what a column has beside the others, made to length 1, and gives the logarithm of its length.</summary>
    private static double AddTo(List<double[]> columns, double[]? column)
    {
        if (column is null)
        {
            return 0;
        }

        var rest = Rest(columns, column);
        var size = Math.Sqrt(Product(rest, rest));
        if (!(size > Dependent * Math.Sqrt(Product(column, column))))
        {
            return 0;
        }

        for (var i = 0; i < rest.Length; i++)
        {
            rest[i] /= size;
        }

        columns.Add(rest);
        return Math.Log(size);
    }

    private static double[] Rest(List<double[]> columns, double[] column)
    {
        var rest = column.ToArray();
        for (var pass = 0; pass < 2; pass++)
        {
            foreach (var other in columns)
            {
                var share = Product(other, rest);
                for (var i = 0; i < rest.Length; i++)
                {
                    rest[i] -= share * other[i];
                }
            }
        }

        return rest;
    }

    private static double[] Neighbours(double[] column)
    {
        var half = new double[column.Length];
        for (var i = 1; i < column.Length; i++)
        {
            half[i] += 0.5 * column[i - 1];
            half[i - 1] += 0.5 * column[i];
        }

        return half;
    }

    private static double Product(double[] one, double[] other)
    {
        double sum = 0;
        for (var i = 0; i < one.Length; i++)
        {
            sum += one[i] * other[i];
        }

        return sum;
    }
}
