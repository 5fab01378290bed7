namespace OilCondition.Statistics;

/// <summary>How far the rate reaches among the curves whose residual sum of squares stays below a limit.</summary>
internal readonly ref struct DecayReach
{
    private const int MostSteps = 100;
    private const double LeastStep = 1e-6;

    /// <summary>Of the way from the best rate: the step after it would be its square.</summary>
    private const double LastStep = 5e-4;

    private readonly DecayColumns columns;
    private readonly DecayShape shape;
    private readonly DecayFound found;
    private readonly double best;
    private readonly double least;
    private readonly double bend;

    public DecayReach(scoped in DecayColumns columns, scoped in DecayShape shape, DecayFound found, double excess)
    {
        this.columns = columns;
        this.shape = shape;
        this.found = found;
        best = Math.Log(found.ScaledRate);
        var sums = found.Sums;
        var curve = shape.Best(sums, found.ScaledRate);
        least = Math.Max(0, curve.ResidualSumOfSquares);
        Limit = least + excess;

        // RSS is near its least a parabola in ln κ. With start and floor free it is Total − c²/v, whose logarithm the search bends; else the linear parts stay.
        var change = curve.Floor - curve.Start;
        var isAtBound = shape.Slope(sums, out _, out var second);
        bend =
            isAtBound || shape.KnowsStart || shape.KnowsFloor
                ? change * (change * sums.DD2 - 2 * (sums.DY2 - curve.Start * sums.D2))
                : -second * (shape.Total - least);
    }

    /// <summary>The limit of the residual sum of squares, scaled.</summary>
    public double Limit { get; }

    /// <summary>The ends of ln κ; an end that is not there is that of the search.</summary>
    public void Find(
        double logOfNothing,
        out double lowest,
        out bool hasLowest,
        out double highest,
        out bool hasHighest
    )
    {
        scoped var scan = found.Scan;
        if (scan.IsEmpty)
        {
            // All readings equal but for their last bits: the fit searched no rate.
            Span<double> squares = stackalloc double[DecayScan.MostOctaves];
            Span<double> free = stackalloc double[DecayScan.MostOctaves];
            var octaves = DecayScan.Octaves(columns, shape.Lead);
            DecayScan.OfOctaves(columns, shape, octaves, squares, free);
            scan = squares.Slice(0, octaves);
        }

        var levels = scan.Length;
        var top = DecayScan.LogLowest + (levels - 1) * DecayScan.Octave;
        lowest = best;
        highest = best;
        for (var i = 0; i < levels; i++)
        {
            if (scan[i] <= Limit)
            {
                lowest = Math.Min(lowest, DecayScan.LogLowest + i * DecayScan.Octave);
                highest = Math.Max(highest, DecayScan.LogLowest + i * DecayScan.Octave);
            }
        }

        var rate = Math.Exp(logOfNothing);
        hasLowest = shape.Best(columns.Exponential(rate), rate).ResidualSumOfSquares > Limit;
        lowest = !hasLowest
            ? logOfNothing
            : Edge(lowest, lowest > DecayScan.LogLowest ? lowest - DecayScan.Octave : logOfNothing);
        hasHighest = highest < top && scan[levels - 1] > Limit;
        highest = !hasHighest ? top : Edge(highest, Math.Min(top, highest + DecayScan.Octave));
    }

    /// <summary>Where the profile passes the limit, between a rate inside and one outside.</summary>
    /// <remarks>Newton's method on sqrt(RSS − least), which is nearly a straight line in ln κ, kept in a bracket by halving.</remarks>
    private double Edge(double inside, double outside)
    {
        var size = Math.Sqrt(Limit - least);
        if (!(size > 0))
        {
            return inside;
        }

        var away = Math.Sign(outside - inside);
        var u = bend > 0 ? best + away * size * Math.Sqrt(2 / bend) : outside;
        for (var i = 0; i < MostSteps; i++)
        {
            if (!((u - inside) * away > 0 && (outside - u) * away > 0))
            {
                u = (inside + outside) / 2;
            }

            var rate = Math.Exp(u);
            var sums = columns.WithDerivatives(rate);
            var curve = shape.Best(sums, rate);
            if (curve.ResidualSumOfSquares <= Limit)
            {
                inside = u;
            }
            else
            {
                outside = u;
            }

            // The derivative of RSS is the partial one: at its least it does not depend on start and floor.
            var change = curve.Floor - curve.Start;
            var slope = -2 * change * (sums.DY1 - curve.Start * sums.D1 - change * sums.DD1 / 2);
            var height = Math.Sqrt(Math.Max(0, curve.ResidualSumOfSquares - least));
            var step = (size - height) * 2 * height / slope;
            var isLast = Math.Abs(step) < Math.Max(LeastStep, LastStep * Math.Abs(u - best));
            if (isLast || Math.Abs(outside - inside) < 1e-12)
            {
                return isLast ? u + step : inside;
            }

            u = Math.Abs(step) < 10 ? u + step : outside;
        }

        return inside;
    }
}
