namespace OilCondition.Statistics;

/// <summary>The set of all curves whose residual sum of squares stays below a limit, and how far a quantity reaches in it.</summary>
/// <remarks>Bates and Watts (1988): {RSS ≤ RSS_min + t² s²}. No search inside a search: for each rate the rest is closed-form.</remarks>
internal readonly ref struct DecayProfile
{
    /// <summary>In rate times span, as good as no decay: a straight line, or a constant where the floor is bounded.</summary>
    private static readonly double LogOfNothing = -44 * Math.Log(2);

    /// <summary>A floor this many times the spread of the values away is no floor.</summary>
    private const double Beyond = 1e7;

    private readonly DecayColumns columns;
    private readonly DecayShape shape;
    private readonly double limit;

    /// <summary>The set of curves.</summary>
    /// <param name="columns">Working values and weights.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="bestScaledRate">Rate of the fit.</param>
    /// <param name="excess">t² s² in the units of the caller's values and weights.</param>
    /// <param name="rateIsKnown">Whether only that rate counts.</param>
    public DecayProfile(
        scoped in DecayColumns columns,
        scoped in DecayShape shape,
        double bestScaledRate,
        double excess,
        bool rateIsKnown
    )
    {
        this.columns = columns;
        this.shape = shape;
        var best = shape.Best(columns.Exponential(bestScaledRate), bestScaledRate).ResidualSumOfSquares;
        limit = Math.Max(0, best) + excess / (columns.Unit * columns.Unit * columns.WeightUnit);
        Lowest = Math.Log(bestScaledRate);
        Highest = Lowest;
        if (rateIsKnown)
        {
            return;
        }

        var levels = DecaySearch.Levels(columns);
        var ln2 = Math.Log(2);
        var bottom = Math.Log(DecaySearch.LowestScaledRate);
        var top = bottom + (levels - 1) * ln2;
        var rate = DecaySearch.LowestScaledRate;
        for (var i = 0; i < levels; i++)
        {
            var sums = i == 0 ? columns.Exponential(rate) : columns.Doubled();
            if (shape.Best(sums, rate).ResidualSumOfSquares <= limit)
            {
                Lowest = Math.Min(Lowest, bottom + i * ln2);
                Highest = Math.Max(Highest, bottom + i * ln2);
            }

            rate *= 2;
        }

        HasNoLowestRate = Excess(LogOfNothing) <= 0;
        Lowest = HasNoLowestRate ? LogOfNothing : Edge(Lowest, Lowest > bottom ? Lowest - ln2 : LogOfNothing);
        HasNoHighestRate = Highest >= top || Excess(top) <= 0;
        Highest = HasNoHighestRate ? top : Edge(Highest, Math.Min(top, Highest + ln2));
    }

    /// <summary>ln of the lowest compatible rate times span.</summary>
    public double Lowest { get; }

    /// <summary>ln of the highest compatible rate times span.</summary>
    public double Highest { get; }

    public bool HasNoLowestRate { get; }

    public bool HasNoHighestRate { get; }

    /// <summary>How far the curve's value at a time reaches; a time beyond all is the floor.</summary>
    public void Values(double scaledTime, out double? least, out double? largest)
    {
        var question = new DecayQuestion(IsCrossing: false, scaledTime, 0);
        least = Extreme(question, 1);
        largest = Extreme(question, -1);
        least = least < -Beyond ? null : least;
        largest = largest > Beyond ? null : largest;
    }

    /// <summary>When falling curves pass a target, in spans.</summary>
    public void Crossings(double target, out double? first, out double? last, out bool never)
    {
        var question = new DecayQuestion(IsCrossing: true, 0, target);
        first = Extreme(question, 1);
        last = Extreme(question, -1);

        // A compatible curve that levels off at or above the target never gets below it.
        never = Extreme(new DecayQuestion(IsCrossing: false, double.PositiveInfinity, 0), -1) >= target;
        if (never)
        {
            last = null;
        }
    }

    private DecayEllipse Ellipse(double u) => new(columns, shape, Math.Exp(u), limit);

    private double Excess(double u)
    {
        var rate = Math.Exp(u);
        return shape.Best(columns.Exponential(rate), rate).ResidualSumOfSquares - limit;
    }

    /// <summary>Where the profile passes the limit, between a rate inside and one outside (Illinois form of the false position, kept honest by halving).</summary>
    private double Edge(double inside, double outside)
    {
        var excessInside = Excess(inside);
        var excessOutside = Excess(outside);
        if (!(excessOutside > 0) || excessInside >= 0)
        {
            return inside;
        }

        for (var i = 0; i < 200 && Math.Abs(outside - inside) > 1e-11; i++)
        {
            var share = i % 3 == 2 ? 0.5 : excessInside / (excessInside - excessOutside);
            var middle = inside + (outside - inside) * Math.Max(1e-3, Math.Min(0.999, share));
            var excess = Excess(middle);
            if (excess <= 0)
            {
                inside = middle;
                excessInside = excess;
            }
            else
            {
                outside = middle;
                excessOutside = excess;
            }
        }

        return inside;
    }

    private int Steps() =>
        Highest > Lowest ? Math.Max(24, Math.Min(400, (int)Math.Ceiling((Highest - Lowest) / 0.2))) : 0;

    private double At(int i, int steps) => steps == 0 ? Lowest : Lowest + (Highest - Lowest) * i / steps;

    /// <summary>Least (sign 1) or largest (sign −1) value over all compatible rates: samples, then golden section about the best.</summary>
    private double? Extreme(in DecayQuestion question, int sign)
    {
        var steps = Steps();
        var best = double.PositiveInfinity;
        var at = 0;
        for (var i = 0; i <= steps; i++)
        {
            var value = Answer(question, At(i, steps), sign);
            if (value < best)
            {
                best = value;
                at = i;
            }
        }

        if (double.IsInfinity(best) || steps == 0)
        {
            return double.IsInfinity(best) ? null : sign * best;
        }

        var from = At(Math.Max(0, at - 1), steps);
        var to = At(Math.Min(steps, at + 1), steps);
        var golden = (Math.Sqrt(5) - 1) / 2;
        var u1 = to - golden * (to - from);
        var u2 = from + golden * (to - from);
        var y1 = Answer(question, u1, sign);
        var y2 = Answer(question, u2, sign);

        // The extreme is flat: half of the digits in ln k give all of them in the value.
        while (to - from > 1e-7)
        {
            if (y1 <= y2)
            {
                to = u2;
                u2 = u1;
                y2 = y1;
                u1 = to - golden * (to - from);
                y1 = Answer(question, u1, sign);
            }
            else
            {
                from = u1;
                u1 = u2;
                y1 = y2;
                u2 = from + golden * (to - from);
                y2 = Answer(question, u2, sign);
            }
        }

        return sign * Math.Min(best, Math.Min(y1, y2));
    }

    private double Answer(in DecayQuestion question, double u, int sign)
    {
        var ellipse = Ellipse(u);
        if (ellipse.IsEmpty)
        {
            return double.PositiveInfinity;
        }

        var rate = Math.Exp(u);
        if (!question.IsCrossing)
        {
            ellipse.Range(Math.Exp(-rate * question.ScaledTime), out var least, out var largest);
            return sign > 0 ? least : -largest;
        }

        return ellipse.TryCross(question.Target, out var first, out var last)
            ? sign * -Math.Log(sign > 0 ? first : last) / rate
            : double.PositiveInfinity;
    }
}
