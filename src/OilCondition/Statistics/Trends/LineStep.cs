namespace OilCondition.Statistics;

/// <summary>A sudden step on a steady line: what a treatment or an oil change that nobody recorded leaves behind.</summary>
/// <remarks>
/// y = a + b t + c for readings from the step on. Every place between two different times with at least three readings on either side is
/// tried; the best lowers the residual sum of squares most. F = lowering/(RSS/(n − 3)); its probability is multiplied by the number of
/// places tried (Bonferroni), which errs to the safe side. A pure change of level is the case b = 0. Assumes normal, independent scatter;
/// a lag-1 correlation ρ of the residuals divides F by (1 + ρ)/(1 − ρ).
/// </remarks>
internal static class LineStep
{
    /// <summary>Fewest readings on either side of a step: one alone is a wild value, two are hardly more.</summary>
    private const int LeastOnASide = 3;

    private const int MostOnStack = 128;

    private static readonly Course[] Growths = [Course.Exponential(3), Course.Exponential(7), Course.Exponential(-4)];

    /// <summary>Finds the likeliest step.</summary>
    /// <param name="times">When readings were taken, ascending; n values.</param>
    /// <param name="values">What was read; n values.</param>
    /// <param name="leastScatter">The least scatter that readings may be taken to have: equal rounded readings do not scatter by nothing.</param>
    /// <returns>Place, size and probability, or that no place could be tried.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the times do not ascend.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100.</exception>
    public static LineStepResult Find(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double leastScatter = 0)
    {
        var line = StraightLine.Fit(times, values);
        Numbers.Ascending(times, nameof(times));
        if (line.Status != LineStatus.Determined || times.Length < 2 * LeastOnASide)
        {
            return default;
        }

        Span<double> residuals =
            values.Length <= MostOnStack ? stackalloc double[values.Length] : new double[values.Length];
        line.Residuals(times, values, residuals);
        return Best(times, residuals, line, out var best) is > 0 and var tried
            ? Judged(times, residuals, line, best, tried, leastScatter)
            : default;
    }

    /// <summary>Whether a parabola, a rise that comes late or one that levels off explains the readings as well as the step does: then it is none.</summary>
    /// <param name="times">When readings were taken, as they were searched.</param>
    /// <param name="values">What was read.</param>
    /// <param name="step">The step that was found.</param>
    public static bool IsBend(ReadOnlySpan<double> times, ReadOnlySpan<double> values, LineStepResult step)
    {
        if (!step.IsTried)
        {
            return false;
        }

        var line = StraightLine.Fit(times, values);
        var residuals = new double[values.Length];
        line.Residuals(times, values, residuals);
        return Curvature.Of(times, values, line).LoweringByParabola >= step.Lowering
            || LoweringByGrowth(times, residuals) >= step.Lowering;
    }

    /// <summary>How far a rise that comes late, or one that levels off, lowers the residual sum of squares of the line.</summary>
    private static double LoweringByGrowth(ReadOnlySpan<double> times, double[] residuals)
    {
        double most = 0;
        var part = new double[times.Length];
        foreach (var course in Growths)
        {
            for (var i = 0; i < part.Length; i++)
            {
                part[i] = course.At((times[i] - times[0]) / (times[times.Length - 1] - times[0]));
            }

            StraightLine.Fit(times, part).Residuals(times, part, part);
            double products = 0;
            for (var i = 0; i < part.Length; i++)
            {
                products += part[i] * residuals[i];
            }

            var squares = Numbers.SumOfSquaresAbout(part, 0);
            most = Math.Max(most, squares > 1e-12 ? products * products / squares : 0);
        }

        return most;
    }

    /// <summary>Tries every place and returns how many there were.</summary>
    private static int Best(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> residuals,
        in StraightLine line,
        out Place best
    )
    {
        var n = residuals.Length;
        var tried = 0;
        best = default;
        double after = 0;
        double residualSum = 0;
        double timeSum = 0;
        for (var first = n - 1; first >= LeastOnASide; first--)
        {
            // What is left of the step (0 before, 1 after) once a line is taken out of it.
            after++;
            residualSum += residuals[first];
            timeSum += times[first] - line.MeanPosition;
            var step = after - after * after / n - timeSum * timeSum / line.PositionSumOfSquares;
            if (n - first < LeastOnASide || times[first] <= times[first - 1] || !(step > 1e-9))
            {
                continue;
            }

            tried++;
            var lowering = residualSum * residualSum / step;
            if (best.FirstAfter == 0 || lowering > best.Lowering)
            {
                best = new Place(first, lowering, residualSum / step, timeSum, after);
            }
        }

        return tried;
    }

    private static LineStepResult Judged(
        ReadOnlySpan<double> times,
        Span<double> residuals,
        in StraightLine line,
        Place best,
        int tried,
        double leastScatter
    )
    {
        var n = residuals.Length;

        // The residuals beside the step, for their own correlation and sum of squares.
        for (var i = 0; i < n; i++)
        {
            var stepOnLine = best.After / n + best.TimeSum / line.PositionSumOfSquares * (times[i] - line.MeanPosition);
            residuals[i] -= best.Size * ((i >= best.FirstAfter ? 1 : 0) - stepOnLine);
        }

        var left = Math.Max(Numbers.SumOfSquaresAbout(residuals, 0), (n - 3) * leastScatter * leastScatter);
        if (!(best.Lowering > 1e-20 * line.ValueSumOfSquares))
        {
            return new LineStepResult(best.FirstAfter, best.Size, 1, 0, best.Lowering, left);
        }

        var correlation = ResidualCorrelation.Corrected(residuals, fittedParts: 3);
        var f = best.Lowering / (left / (n - 3)) * (1 - correlation) / (1 + correlation);
        var tail = left > 1e-24 * line.ValueSumOfSquares ? StudentDistribution.TwoSidedTail(Math.Sqrt(f), n - 3) : 0;
        return new LineStepResult(
            best.FirstAfter,
            best.Size,
            Math.Min(1, tried * tail),
            correlation,
            best.Lowering,
            left
        );
    }

    private readonly record struct Place(int FirstAfter, double Lowering, double Size, double TimeSum, double After);
}
