namespace OilCondition.Statistics;

/// <summary>Variable projection (Golub and Pereyra 1973): only the rate is searched, over all that the data can tell apart.</summary>
internal static class DecaySearch
{
    /// <summary>Below it, in rate times span, the curve is a straight line to within 0.02 % of its fall.</summary>
    public const double LowestScaledRate = 1.0 / 64;

    /// <summary>e^−12 of the fall is left at the first reading after the origin: any faster curve is the same step.</summary>
    private const double TimeConstantsInFirstGap = 12;

    private const int MostLevels = 56;
    private const int MostSteps = 80;

    /// <summary>The level above which a scan of octaves is a step for these readings.</summary>
    public static int Levels(in DecayColumns columns) =>
        Math.Min(
            MostLevels,
            2 + (int)Math.Ceiling(Math.Log(TimeConstantsInFirstGap / columns.FirstGap / LowestScaledRate) / Math.Log(2))
        );

    /// <summary>The curve of least weighted squares over all rates.</summary>
    /// <param name="columns">The series.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="limit">−1 if the optimum is the slowest rate of the search, 1 if the fastest, else 0.</param>
    /// <param name="sums">The sums at the optimum.</param>
    public static DecayAtRate Find(in DecayColumns columns, in DecayShape shape, out int limit, out DecaySums sums)
    {
        var levels = Levels(columns);
        Span<double> scan = stackalloc double[MostLevels];
        var rate = LowestScaledRate;
        scan[0] = shape.Best(columns.Exponential(rate), rate).ResidualSumOfSquares;
        for (var i = 1; i < levels; i++)
        {
            rate *= 2;
            scan[i] = shape.Best(columns.Doubled(), rate).ResidualSumOfSquares;
        }

        var found = false;
        var latest = 0.0;
        DecayAtRate best = default;
        sums = default;
        limit = 0;
        for (var i = 0; i < levels; i++)
        {
            var noHigherBefore = i == 0 || scan[i] <= scan[i - 1];
            var lowerThanNext = i == levels - 1 || scan[i] < scan[i + 1];
            if (!noHigherBefore || !lowerThanNext)
            {
                continue;
            }

            var refined = Refine(columns, shape, scan, levels, i, out var side, out var at);
            latest = refined.ScaledRate;
            if (!found || refined.ResidualSumOfSquares < best.ResidualSumOfSquares)
            {
                best = refined;
                limit = side;
                sums = at;
                found = true;
            }
        }

        if (best.ScaledRate != latest)
        {
            // The drops left behind are those of another minimum.
            sums = columns.WithDerivatives(best.ScaledRate);
        }

        return best;
    }

    private static DecayAtRate Refine(
        in DecayColumns columns,
        in DecayShape shape,
        ReadOnlySpan<double> scan,
        int levels,
        int level,
        out int limit,
        out DecaySums sums
    )
    {
        var ln2 = Math.Log(2);
        var u = Math.Log(LowestScaledRate) + level * ln2;
        limit =
            level == 0 ? -1
            : level == levels - 1 ? 1
            : 0;
        if (limit != 0)
        {
            var rate = Math.Exp(u);
            sums = columns.WithDerivatives(rate);
            var edge = shape.Best(sums, rate);
            shape.Slope(sums, edge.AtBound, out var slope, out _);
            if (!(slope * limit < 0))
            {
                return edge;
            }
        }

        var lowest = limit < 0 ? u : u - ln2;
        var highest = limit > 0 ? u : u + ln2;
        u = limit == 0 ? u + ln2 * Vertex(scan[level - 1], scan[level], scan[level + 1]) : (lowest + highest) / 2;
        limit = 0;
        return Newton(columns, shape, lowest, highest, u, out sums);
    }

    /// <summary>Newton's method in u = ln κ inside a bracket that every step narrows; a step that leaves it is a bisection.</summary>
    private static DecayAtRate Newton(
        in DecayColumns columns,
        in DecayShape shape,
        double lowest,
        double highest,
        double u,
        out DecaySums sums
    )
    {
        var settled = false;
        for (var step = 0; ; step++)
        {
            var rate = Math.Exp(u);
            sums = columns.WithDerivatives(rate);
            var curve = shape.Best(sums, rate);
            if (settled || step == MostSteps)
            {
                return curve;
            }

            shape.Slope(sums, curve.AtBound, out var first, out var second);
            if (first > 0)
            {
                lowest = u;
            }
            else
            {
                highest = u;
            }

            var next = u - first / second;
            if (!(second < 0 && next > lowest && next < highest))
            {
                next = (lowest + highest) / 2;
            }

            // Quadratic convergence: what is left after a step of 1e-6 is of the order of 1e-12.
            settled = Math.Abs(next - u) < 1e-6;
            u = next;
        }
    }

    /// <summary>Lowest point of the parabola through three values at −1, 0 and 1.</summary>
    private static double Vertex(double before, double here, double after)
    {
        var bend = before - 2 * here + after;
        return bend > 0 ? Math.Max(-0.9, Math.Min(0.9, 0.5 * (before - after) / bend)) : 0;
    }
}
