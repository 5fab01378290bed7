namespace OilCondition.Statistics;

/// <content>What the residuals say beside the parts of the fit.</content>
internal readonly partial struct DecayDesign
{
    /// <summary>Below it the quick sum for Student's t loses its digits.</summary>
    private const double SmallByDifference = 1e-6;

    // A part that falls first is taken to be 4 times as fast as the fit, by two squarings of e; 2.5 to 8 find about the same. A dead time shows in
    // the first readings only: its column, 8 times as fast, falls within them.

    /// <summary>A second fall so much slower than the fit is what hides in a level (chosen by simulation: 1/4 sees no level in short runs, 4 hides one).</summary>
    private const double Slower = 0.4;

    /// <summary>Two columns more leave too little with fewer degrees of freedom.</summary>
    private const int FewestBesideWidened = 6;

    /// <summary>Sum of squares, degrees of freedom and size beside the two columns of the check of the course, where enough readings are left.</summary>
    /// <remarks>Scatter that is told beside a course that is contradicted would take what contradicts it for scatter.</remarks>
    public (double Squares, int Degrees, double LogSize) Widened()
    {
        if (Degrees < FewestBesideWidened)
        {
            return (squares, Degrees, LogSize);
        }

        var need = (2 * Block + 1) * Length;
        var scratch = need <= MostOnStack ? stackalloc double[need] : new double[need];
        var wide = scratch.Slice(0, 2 * Block * Length);
        var made = scratch.Slice(2 * Block * Length);
        Basis.CopyTo(wide);
        var wider = columns;
        var logSize =
            LogSize + Add(wide, ref wider, Column.Faster, made) + Add(wide, ref wider, Column.MuchFaster, made);
        Residuals.CopyTo(made);
        return (Reduce(wide, made, out _), count - wider, logSize);
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

            var need = (Block + 1) * Length;
            var halves = need <= MostOnStack ? stackalloc double[need] : new double[need];
            for (var i = 0; i < Block; i++)
            {
                Neighbours(Basis.Slice(i * Length, Length), halves.Slice(i * Length, Length));
            }

            Neighbours(Residuals, halves.Slice(Block * Length));
            Neighbouring(halves, out var trace, out var traceOfSquare, out var product);
            var mean = trace / degrees;
            var variance = 2 * (degrees * traceOfSquare - trace * trace) / ((double)degrees * degrees * (degrees + 2));
            var lagOne = product / squares;
            return variance > 0 ? (lagOne - mean) / Math.Sqrt(variance) : 0;
        }
    }

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
            ? new CourseChances(1, TailAbove(Column.Rate, falls))
            : TailsAbove(falls);
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

        var others = new double[2 * Block * Length];
        var made = new double[Length];
        var tried = 0;
        if (parts.Start)
        {
            Add(others, ref tried, Column.Start, made);
        }

        if (parts.Rate)
        {
            Add(others, ref tried, Column.Rate, made);
        }

        Add(others, ref tried, Column.Slower, made);
        var beside = tried;
        var floor = new double[Length];
        Fill(Column.Floor, floor);
        var size = Reduce(others, floor, out _);
        Add(others, ref tried, Column.Floor, made);
        if (tried == beside)
        {
            return null;
        }

        var left = Residuals.ToArray();
        var squaresLeft = Reduce(others, left, out _);
        var degrees = count - tried;
        var error = Math.Sqrt(squaresLeft / degrees / size);
        return Product(floor, Residuals) / size - scatterQuantile(degrees) * error;
    }

    /// <summary>The chances of both second falls, from one pass over the readings; where little of a column is left, it is taken by itself.</summary>
    private CourseChances TailsAbove(bool falls)
    {
        var length = Length;
        var basis = Basis;
        var residuals = Residuals;
        var roots = Roots;
        var drops = Drops;
        var share = LaneMath.Of(parts.Start ? 0 : 1);
        Lanes fasterA = default;
        Lanes fasterB = default;
        Lanes fasterC = default;
        Lanes fasterRest = default;
        Lanes fasterSize = default;
        Lanes muchA = default;
        Lanes muchB = default;
        Lanes muchC = default;
        Lanes muchRest = default;
        Lanes muchSize = default;
        for (var i = 0; i < length; i += LaneMath.Width)
        {
            var root = LaneMath.Load(roots, i);
            var e = LaneMath.Of(1) - LaneMath.Load(drops, i);
            var fourth = e * e * (e * e);
            var first = share * e;
            var faster = root * (fourth - first);
            var much = root * (fourth * fourth - first);
            var a = LaneMath.Load(basis, i);
            var b = LaneMath.Load(basis, length + i);
            var c = LaneMath.Load(basis, 2 * length + i);
            var rest = LaneMath.Load(residuals, i);
            fasterA = LaneMath.MultiplyAdd(a, faster, fasterA);
            muchA = LaneMath.MultiplyAdd(a, much, muchA);
            fasterB = LaneMath.MultiplyAdd(b, faster, fasterB);
            muchB = LaneMath.MultiplyAdd(b, much, muchB);
            fasterC = LaneMath.MultiplyAdd(c, faster, fasterC);
            muchC = LaneMath.MultiplyAdd(c, much, muchC);
            fasterRest = LaneMath.MultiplyAdd(rest, faster, fasterRest);
            muchRest = LaneMath.MultiplyAdd(rest, much, muchRest);
            fasterSize = LaneMath.MultiplyAdd(faster, faster, fasterSize);
            muchSize = LaneMath.MultiplyAdd(much, much, muchSize);
        }

        return new CourseChances(
            Left(fasterSize, fasterA, fasterB, fasterC, out var size)
                ? Tail(LaneMath.Sum(fasterRest), size, falls)
                : TailAbove(Column.Faster, falls),
            Left(muchSize, muchA, muchB, muchC, out size)
                ? Tail(LaneMath.Sum(muchRest), size, !falls)
                : TailAbove(Column.MuchFaster, !falls)
        );

        static bool Left(Lanes squares, Lanes a, Lanes b, Lanes c, out double left)
        {
            var whole = LaneMath.Sum(squares);
            var (first, second, third) = (LaneMath.Sum(a), LaneMath.Sum(b), LaneMath.Sum(c));
            left = whole - first * first - second * second - third * third;
            return left > LittleLeft * whole;
        }
    }

    /// <summary>The chance that independent scatter gives an added column as much on one side; not a number where it is none.</summary>
    private double TailAbove(Column added, bool positive)
    {
        var beside = Length <= MostOnStack ? stackalloc double[Length] : new double[Length];
        Fill(added, beside);

        // The residuals are orthogonal to the others: their product with the column is that with what is left of it.
        var product = Product(beside, Residuals);
        var size = Reduce(Basis, beside, out var whole);
        return size > Dependent * Dependent * whole ? Tail(product, size, positive) : double.NaN;
    }

    /// <summary>The chance from the product of the residuals with an added column and what is left of its sum of squares beside the others.</summary>
    private double Tail(double product, double size, bool positive)
    {
        var share = product / Math.Sqrt(size);
        var degrees = Degrees - 1;
        var rest = Math.Max(squares - share * share, 1e-30 * squares);
        var t = (positive ? -1 : 1) * share / Math.Sqrt(rest / degrees);
        var chance = StudentDistribution.Below(t, degrees);
        return chance > SmallByDifference ? chance : StudentDistribution.Cumulative(t, degrees);
    }

    /// <summary>Half of both neighbours of each.</summary>
    private void Neighbours(ReadOnlySpan<double> column, Span<double> half)
    {
        // Beyond the readings the column is zero; so must be what is made of it.
        var last = count - 1;
        half[0] = last > 0 ? 0.5 * column[1] : 0;
        var i = 1;
        for (; i <= last - LaneMath.Width; i += LaneMath.Width)
        {
            var both = LaneMath.Load(column, i - 1) + LaneMath.Load(column, i + 1);
            LaneMath.Store(LaneMath.Of(0.5) * both, half, i);
        }

        for (; i < last; i++)
        {
            half[i] = 0.5 * (column[i - 1] + column[i + 1]);
        }

        half.Slice(last).Clear();
        half[last] = last > 0 ? 0.5 * column[last - 1] : 0;
    }

    /// <summary>tr(MA), tr(MAMA) and r A r in one pass, A being half of both neighbours.</summary>
    /// <param name="halves">A times each column of the basis, then A times the residuals.</param>
    /// <param name="trace">tr(MA).</param>
    /// <param name="traceOfSquare">tr(MAMA).</param>
    /// <param name="product">r A r.</param>
    private void Neighbouring(
        ReadOnlySpan<double> halves,
        out double trace,
        out double traceOfSquare,
        out double product
    )
    {
        var length = Length;
        var basis = Basis;
        var residuals = Residuals;
        Lanes aa = default;
        Lanes bb = default;
        Lanes cc = default;
        Lanes ab = default;
        Lanes ac = default;
        Lanes bc = default;
        Lanes rr = default;
        Lanes size = default;
        for (var i = 0; i < length; i += LaneMath.Width)
        {
            var a = LaneMath.Load(basis, i);
            var b = LaneMath.Load(basis, length + i);
            var halfA = LaneMath.Load(halves, i);
            var halfB = LaneMath.Load(halves, length + i);
            var halfC = LaneMath.Load(halves, 2 * length + i);
            aa = LaneMath.MultiplyAdd(a, halfA, aa);
            ab = LaneMath.MultiplyAdd(a, halfB, ab);
            ac = LaneMath.MultiplyAdd(a, halfC, ac);
            bb = LaneMath.MultiplyAdd(b, halfB, bb);
            bc = LaneMath.MultiplyAdd(b, halfC, bc);
            cc = LaneMath.MultiplyAdd(LaneMath.Load(basis, 2 * length + i), halfC, cc);
            rr = LaneMath.MultiplyAdd(LaneMath.Load(residuals, i), LaneMath.Load(halves, 3 * length + i), rr);
            size = LaneMath.MultiplyAdd(halfA, halfA, size);
            size = LaneMath.MultiplyAdd(halfB, halfB, size);
            size = LaneMath.MultiplyAdd(halfC, halfC, size);
        }

        product = LaneMath.Sum(rr);
        var (ownA, ownB, ownC) = (LaneMath.Sum(aa), LaneMath.Sum(bb), LaneMath.Sum(cc));
        var (withB, withC, between) = (LaneMath.Sum(ab), LaneMath.Sum(ac), LaneMath.Sum(bc));
        trace = -(ownA + ownB + ownC);
        traceOfSquare =
            0.5 * (count - 1)
            - 2 * LaneMath.Sum(size)
            + (ownA * ownA + ownB * ownB + ownC * ownC)
            + 2 * (withB * withB + withC * withC + between * between);
    }
}
