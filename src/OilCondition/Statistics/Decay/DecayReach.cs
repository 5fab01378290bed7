namespace OilCondition.Statistics;

/// <summary>How far the rate reaches among the curves whose residual sum of squares stays below a limit.</summary>
internal readonly ref struct DecayReach
{
    private const int MostSteps = 100;
    private const double LeastStep = 1e-6;

    /// <summary>Of the way from the best rate: the step after it would be its cube.</summary>
    private const double LastStep = 2e-3;

    /// <summary>Of the sum of squares about the mean: what a residual sum of squares may be off. That of a profile, so that both take the same readings for exact.</summary>
    private const double Rounding = DecayProfile.Rounding;

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

        shape.SlopeOfSquares(sums, least, out _, out bend);
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
        hasHighest = highest < top && scan[levels - 1] > Limit;
        lowest = !hasLowest
            ? logOfNothing
            : Edge(lowest, lowest > DecayScan.LogLowest ? lowest - DecayScan.Octave : logOfNothing);
        highest = !hasHighest ? top : Edge(highest, Math.Min(top, highest + DecayScan.Octave));
        if (hasLowest && hasHighest && Limit - least < Rounding * shape.Total)
        {
            // Exact readings leave one rate; ends apart would be rounding.
            lowest = best;
            highest = best;
        }
    }

    /// <summary>Where the profile passes the limit, between a rate inside and one outside.</summary>
    /// <remarks>Halley's method on sqrt(RSS − least), which is nearly a straight line in ln κ, kept in a bracket by halving.</remarks>
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
            var squares = shape.Best(sums, rate).ResidualSumOfSquares;
            if (squares <= Limit)
            {
                inside = u;
            }
            else
            {
                outside = u;
            }

            shape.SlopeOfSquares(sums, squares, out var first, out var second);
            var height = Math.Sqrt(Math.Max(0, squares - least));
            var slope = first / (2 * height);
            var step = (size - height) / slope;
            var turn = step * (second / first - slope / height) / 2;
            step /= Math.Abs(turn) < 0.5 ? 1 + turn : 1;
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
