using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>The latest stretch of a run, a straight line through its readings: where a stall shows as no fall, or as a rise.</summary>
/// <remarks>
/// Where the repeatability of the test method is known, it counts for as much as eight readings about the line (ours), so that three or four tell something:
/// s² = (8 s₀² + Σ r²)/(8 + n − 2), Student's t with 8 + n − 2 degrees of freedom.
/// </remarks>
internal sealed record RunStretch(StraightLine Line, double Hours, double Level, double KnownScatter = 0)
{
    private const double Widening = 1.5;

    /// <summary>Degrees of freedom that a known repeatability is worth.</summary>
    private const int KnownFreedom = 8;

    /// <summary>Two results of one method differ by more than 1.96 √2 of its standard deviation once in twenty.</summary>
    private const double DifferenceOfTwo = 2.77;

    public int Count => Line.Count;

    /// <summary>Stretches that end with the last reading, each half as long again as the one before, the shortest first.</summary>
    /// <param name="moments">When the readings were taken, in order.</param>
    /// <param name="values">The readings, in the scale of the line.</param>
    /// <param name="fewest">Readings of the shortest.</param>
    /// <param name="confidence">Two-sided confidence of the whole run.</param>
    public static IEnumerable<RunStretch> EndingNow(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<double> values,
        int fewest,
        double confidence
    )
    {
        for (var n = fewest; n <= moments.Count; n = Longer(n, moments.Count))
        {
            if (Latest(moments, values, n, confidence) is { } found)
            {
                yield return found;
            }
        }
    }

    /// <summary>All of the readings; null where they are at one moment.</summary>
    public static RunStretch? Whole(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<double> values,
        double confidence
    ) => Latest(moments, values, moments.Count, confidence);

    /// <summary>The same with the repeatability of the test method.</summary>
    public RunStretch ByMethod(Measurand measurand) =>
        this with
        {
            KnownScatter = measurand.UncertaintyOf(Line.MeanValue) / DifferenceOfTwo,
        };

    private static RunStretch? Latest(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<double> values,
        int count,
        double confidence
    )
    {
        var first = moments.Count - count;
        var line = StraightLine.Fit(
            moments.Skip(first).Select(at => (at - moments[first]).TotalHours).ToArray(),
            values.Skip(first).ToArray()
        );
        return line.IsDetermined
            ? new RunStretch(
                line,
                (moments[moments.Count - 1] - moments[first]).TotalHours,
                SequentialLevel.OneSided(confidence, moments.Count)
            )
            : null;
    }

    public double ValueAtStart => Line.ValueAt(0);

    public double ValueAtEnd => Line.ValueAt(Hours);

    /// <summary>What it falls by, and the ends of that; below 0 for a rise.</summary>
    public double Fall => -Line.Slope * Hours;

    public double MostFall => Fall + Half(Level, IntervalSide.Lower) * Hours;

    /// <summary>The lower end of the fall, at a usual level: to be fair to a run that falls.</summary>
    public double LeastFall(double confidence) => Fall - Half(confidence, IntervalSide.Both) * Hours;

    /// <summary>The upper end of the fall at the same level.</summary>
    public double UsualMostFall(double confidence) => Fall + Half(confidence, IntervalSide.Both) * Hours;

    /// <summary>The least that it rises by.</summary>
    public double LeastRise => -MostFall;

    /// <summary>Half of an interval of the slope.</summary>
    public double Half(double confidence, IntervalSide side)
    {
        var known = KnownScatter > 0 ? KnownFreedom : 0;
        var freedom = known + Line.DegreesOfFreedom;
        var variance = (known * KnownScatter * KnownScatter + Line.ResidualSumOfSquares) / freedom;
        return IntervalLevel.StudentQuantile(confidence, side, freedom)
            * Math.Sqrt(variance / Line.PositionSumOfSquares);
    }

    private static int Longer(int n, int all) => n == all ? all + 1 : Math.Min(all, (int)Math.Ceiling(n * Widening));
}
