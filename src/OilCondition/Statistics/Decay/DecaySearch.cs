using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>Variable projection (Golub and Pereyra 1973): only the rate is searched, over all that the data can tell apart.</summary>
internal static class DecaySearch
{
    private const int MostSteps = 80;

    /// <summary>With the bend of the slope taken from the pass before, a last step of this size leaves far less than 1e-10 of the rate; the first step has none.</summary>
    private const double LastStep = 3e-5;
    private const double LastFirstStep = 3e-6;
    private const double LastStepOverKink = 1e-11;

    /// <summary>Up to so many readings, or where so little is left of the fall over all readings (the first one counts 1), minima are narrow:
    /// one may lie hidden between two octaves, or behind the kink where the floor meets its bound.</summary>
    private const int FewReadings = 8;
    private const double FewTellTheRate = 2.5;

    /// <summary>The curve of least weighted squares over all rates.</summary>
    /// <param name="columns">The series.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="found">Keeps the scan; or null.</param>
    /// <param name="limit">−1 if the optimum is the slowest rate of the search, 1 if the fastest, else 0.</param>
    /// <param name="sums">The sums at the optimum.</param>
    [SkipLocalsInit]
    public static DecayAtRate Find(
        in DecayColumns columns,
        in DecayShape shape,
        DecayFound? found,
        out int limit,
        out DecaySums sums
    )
    {
        Span<double> squares = stackalloc double[DecayScan.MostOctaves];
        Span<double> free = stackalloc double[DecayScan.MostOctaves];
        var scan = DecayScan.OfOctaves(columns, shape, DecayScan.Octaves(columns, shape.Lead), squares, free);
        found?.KeepScan(squares.Slice(0, scan.Levels));
        DecayOptimum best = default;
        var few = columns.Count <= FewReadings;
        if (!few)
        {
            Search(columns, shape, scan, ref best);
        }

        if (few || columns.Count - best.Sums.D < FewTellTheRate)
        {
            Span<double> fineSquares = stackalloc double[DecayScan.Parts * DecayScan.MostOctaves];
            Span<double> fineFree = stackalloc double[DecayScan.Parts * DecayScan.MostOctaves];
            var steep = Math.Min(best.Curve.ScaledRate / 8, 0.5 / columns.FirstGap);
            var from = few ? 0 : Math.Max(0, DecayScan.OctaveOf(steep));
            var fine = scan.Finer(columns, shape, from, fineSquares, fineFree);
            best.LoseDrops();
            Search(columns, shape, fine, ref best);
        }

        best.Settle(columns, shape);
        limit = best.Limit;
        sums = best.Sums;
        return best.Curve;
    }

    /// <summary>Refines every minimum of a scan.</summary>
    private static void Search(in DecayColumns columns, in DecayShape shape, in DecayScan scan, ref DecayOptimum best)
    {
        for (var i = 0; i < scan.Levels; i++)
        {
            if (!scan.IsMinimum(i) || best.IsNear(scan.LogRate(i), scan.Step))
            {
                continue;
            }

            var here = Refine(columns, shape, scan, i, out var limit, out var sums);
            best.Keep(here, limit, sums);
        }
    }

    private static DecayAtRate Refine(
        in DecayColumns columns,
        in DecayShape shape,
        in DecayScan scan,
        int level,
        out int limit,
        out DecaySums sums
    )
    {
        var u = scan.LogRate(level);
        limit = scan.End(level);
        if (limit != 0)
        {
            var rate = Math.Exp(u);
            sums = columns.WithDerivatives(rate);
            var edge = shape.Best(sums, rate);
            shape.Slope(sums, out var slope, out _);
            if (!(slope * limit < 0))
            {
                return edge;
            }
        }

        var lowest = limit < 0 ? u : u - scan.Step;
        var highest = limit > 0 ? u : u + scan.Step;
        u = limit == 0 ? u + scan.Step * scan.Lowest(level) : (lowest + highest) / 2;
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
        double perTaken = 0;
        double secondBefore = 0;
        var boundBefore = false;
        for (var steps = 0; ; steps++)
        {
            var rate = Math.Exp(u);
            sums = columns.WithDerivatives(rate);
            var atBound = shape.Slope(sums, out var first, out var second);
            if (first > 0)
            {
                lowest = u;
            }
            else
            {
                highest = u;
            }

            var perSecond = 1 / second;
            var step = -first * perSecond;

            // The third derivative from the pass before, unless a kink lies between: there the floor meets its bound.
            var correction = (second - secondBefore) * perTaken * step * step * 0.5 * perSecond;
            var isSmooth = taken != 0 && atBound == boundBefore;
            if (isSmooth && Math.Abs(correction) < 0.2 * Math.Abs(step))
            {
                step -= correction;
            }

            if (!(second < 0 && u + step > lowest && u + step < highest))
            {
                step = (lowest + highest) / 2 - u;
            }

            if (Math.Abs(step) < (isSmooth ? LastStep : LastFirstStep) || steps == MostSteps)
            {
                // The last step needs no pass over the readings: the sums there follow from their derivatives. Over a kink it was too long or too short.
                var shifted = sums.Shifted(step);
                var curve = shape.Best(shifted, rate * (1 + step * (1 + step / 2)), step);
                if (curve.AtBound == atBound || Math.Abs(step) < LastStepOverKink || steps == MostSteps)
                {
                    sums = shifted;
                    return curve;
                }
            }

            u += step;
            taken = step;
            perTaken = 1 / step;
            secondBefore = second;
            boundBefore = atBound;
        }
    }
}
