using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>The latest stretch of a run, a straight line through its readings: where a stall shows as no fall, or as a rise.</summary>
/// <remarks>
/// Where the repeatability of the test method is known, it counts for as much as eight readings about the line (ours), so that three or four tell something:
/// s² = (8 s₀² + Σ r²)/(8 + n − 2), Student's t with 8 + n − 2 degrees of freedom.
/// </remarks>
/// <param name="Count">Readings.</param>
/// <param name="Hours">From the first to the last.</param>
/// <param name="MeanHours">Their mean time since the first.</param>
/// <param name="MeanValue">Their mean.</param>
/// <param name="Slope">Rise of the line an hour.</param>
/// <param name="SquaresOfHours">Sum of squares of the times about their mean.</param>
/// <param name="SquaresOfResiduals">Sum of squares about the line.</param>
/// <param name="Level">One-sided level of a look.</param>
/// <param name="KnownScatter">Standard deviation of a reading by its method; 0 where that is not known.</param>
internal sealed record RunStretch(
    int Count,
    double Hours,
    double MeanHours,
    double MeanValue,
    double Slope,
    double SquaresOfHours,
    double SquaresOfResiduals,
    double Level,
    double KnownScatter = 0
)
{
    private const double Widening = 1.5;

    /// <summary>Degrees of freedom that a known repeatability is worth.</summary>
    private const int KnownFreedom = 8;

    /// <summary>Two results of one method differ by more than 1.96 √2 of its standard deviation once in twenty.</summary>
    private const double DifferenceOfTwo = 2.77;

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

    /// <summary>From one sample to the next: their scatter is that of the test method alone.</summary>
    public static RunStretch Between(
        (DateTimeOffset At, double Value) one,
        (DateTimeOffset At, double Value) next,
        double confidence,
        Measurand measurand
    )
    {
        var hours = (next.At - one.At).TotalHours;
        return new RunStretch(
            2,
            hours,
            hours / 2,
            (one.Value + next.Value) / 2,
            (next.Value - one.Value) / hours,
            hours * hours / 2,
            0,
            SequentialLevel.OneSided(confidence, 2)
        ).ByMethod(measurand);
    }

    /// <summary>The same with the repeatability of the test method.</summary>
    public RunStretch ByMethod(Measurand measurand) =>
        this with
        {
            KnownScatter = measurand.UncertaintyOf(MeanValue) / DifferenceOfTwo,
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
                count,
                (moments[moments.Count - 1] - moments[first]).TotalHours,
                line.MeanPosition,
                line.MeanValue,
                line.Slope,
                line.PositionSumOfSquares,
                line.ResidualSumOfSquares,
                SequentialLevel.OneSided(confidence, moments.Count)
            )
            : null;
    }

    public double ValueAtStart => MeanValue - Slope * MeanHours;

    public double ValueAtEnd => ValueAtStart + Slope * Hours;

    /// <summary>What it falls by, and the ends of that; below 0 for a rise.</summary>
    public double Fall => -Slope * Hours;

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
        var freedom = known + Count - 2;
        var variance = (known * KnownScatter * KnownScatter + SquaresOfResiduals) / freedom;
        return IntervalLevel.StudentQuantile(confidence, side, freedom) * Math.Sqrt(variance / SquaresOfHours);
    }

    private static int Longer(int n, int all) => n == all ? all + 1 : Math.Min(all, (int)Math.Ceiling(n * Widening));
}
