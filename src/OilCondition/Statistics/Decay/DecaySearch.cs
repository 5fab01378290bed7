using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>Variable projection (Golub and Pereyra 1973): only the rate is searched, over all that the data can tell apart.</summary>
internal static class DecaySearch
{
    /// <summary>Below it, in rate times span, the curve is a straight line to within 0.02 % of its fall.</summary>
    public const double LowestScaledRate = 1.0 / 64;

    /// <summary>e^−12 of the fall is left at the first reading after the origin: any faster curve is the same step.</summary>
    private const double TimeConstantsInFirstGap = 12;

    public const int MostLevels = 56;
    private const int MostSteps = 80;
    private const double Ln2 = 0.6931471805599453;
    private const double PerLn2 = 1.4426950408889634;
    private static readonly double LogLowest = Math.Log(LowestScaledRate);

    /// <summary>With the bend of the slope taken from the pass before, a last step of this size leaves far less than 1e-10 of the rate.</summary>
    private const double LastStep = 3e-5;

    /// <summary>The level above which a scan of octaves is a step for these readings.</summary>
    public static int Levels(in DecayColumns columns) =>
        Math.Min(
            MostLevels,
            2 + (int)Math.Ceiling(Math.Log(TimeConstantsInFirstGap / LowestScaledRate / columns.FirstGap) * PerLn2)
        );

    /// <summary>The scan: least squares at every level, with the lowest floor and without it.</summary>
    public static void Octaves(
        in DecayColumns columns,
        in DecayShape shape,
        int levels,
        Span<double> squares,
        Span<double> free
    )
    {
        var whole = (levels + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;
        columns.Octaves(LowestScaledRate, shape, squares.Slice(0, whole), free.Slice(0, whole));
    }

    /// <summary>The curve of least weighted squares over all rates.</summary>
    /// <param name="columns">The series.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="limit">−1 if the optimum is the slowest rate of the search, 1 if the fastest, else 0.</param>
    /// <param name="sums">The sums at the optimum.</param>
    [SkipLocalsInit]
    public static DecayAtRate Find(in DecayColumns columns, in DecayShape shape, out int limit, out DecaySums sums)
    {
        var levels = Levels(columns);
        Span<double> scan = stackalloc double[MostLevels];
        Span<double> free = stackalloc double[MostLevels];
        Octaves(columns, shape, levels, scan, free);
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

            var refined = Refine(columns, shape, scan[i] > free[i] ? scan : free, levels, i, out var side, out var at);
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
        var u = LogLowest + level * Ln2;
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

        var lowest = limit < 0 ? u : u - Ln2;
        var highest = limit > 0 ? u : u + Ln2;
        u = limit == 0 ? u + Ln2 * Lowest(scan, levels, level, shape.Total) : (lowest + highest) / 2;
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
        double taken = 0;
        double secondBefore = 0;
        for (var steps = 0; ; steps++)
        {
            var rate = Math.Exp(u);
            sums = columns.WithDerivatives(rate);
            var curve = shape.Best(sums, rate);
            shape.Slope(sums, curve.AtBound, out var first, out var second);
            if (first > 0)
            {
                lowest = u;
            }
            else
            {
                highest = u;
            }

            var step = -first / second;

            // The third derivative from the pass before, unless a kink lies between: the floor meets its bound.
            var correction = taken != 0 ? (second - secondBefore) / taken * step * step / (2 * second) : 0;
            if (Math.Abs(correction) < 0.2 * Math.Abs(step))
            {
                step -= correction;
            }

            if (!(second < 0 && u + step > lowest && u + step < highest))
            {
                step = (lowest + highest) / 2 - u;
            }

            if (Math.Abs(step) < LastStep || steps == MostSteps)
            {
                // The last step needs no pass over the readings: the sums there follow from their derivatives.
                sums = sums.Shifted(step);
                return shape.Best(sums, rate * (1 + step * (1 + step / 2)), step);
            }

            u += step;
            taken = step;
            secondBefore = second;
        }
    }

    /// <summary>Where the scan is lowest near a level, in levels from it, by a polynomial through it and its neighbours.</summary>
    /// <remarks>The reciprocal of what the curve explains is closer to a polynomial than the residual sum of squares: tried on random series.</remarks>
    [SkipLocalsInit]
    private static double Lowest(ReadOnlySpan<double> scan, int levels, int level, double total)
    {
        Span<double> height = stackalloc double[5];
        var wide = level > 1 && level < levels - 2;
        for (var i = wide ? 0 : 1; i < (wide ? 5 : 4); i++)
        {
            var explained = total - scan[level - 2 + i];
            if (!(explained > 0))
            {
                return 0;
            }

            height[i] = total / explained;
        }

        return Math.Max(-0.9, Math.Min(0.9, FivePoints.Lowest(height, wide)));
    }
}
