using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>A straight line with its uncertainty.</summary>
/// <remarks>
/// y(x) = ȳ + b (x − x̄).  Standard error of the mean line: s sqrt(1/n + (x − x̄)²/Sxx); of a new reading: s sqrt(1 + 1/n + (x − x̄)²/Sxx).
/// s² = residual sum of squares / (n − 2). Intervals use Student's t with n − 2 degrees of freedom.
/// </remarks>
public readonly partial record struct StraightLine
{
    internal StraightLine(
        LineStatus status,
        int count,
        double meanPosition,
        double meanValue,
        double slope,
        double positionSumOfSquares,
        double residualSumOfSquares,
        double valueSumOfSquares
    )
    {
        Status = status;
        Count = count;
        MeanPosition = meanPosition;
        MeanValue = meanValue;
        Slope = slope;
        PositionSumOfSquares = positionSumOfSquares;
        ResidualSumOfSquares = residualSumOfSquares;
        ValueSumOfSquares = valueSumOfSquares;
    }

    /// <summary>Whether slope, level and their errors are determined: not by fewer than three points, or at one position. The other members are meaningful only if they are.</summary>
    public bool IsDetermined => Status == LineStatus.Determined;

    /// <summary>Why they are not.</summary>
    internal LineStatus Status { get; }

    /// <summary>Number of points, n.</summary>
    public int Count { get; }

    /// <summary>Mean of the positions, x̄.</summary>
    public double MeanPosition { get; }

    /// <summary>Mean of the values, ȳ.</summary>
    public double MeanValue { get; }

    /// <summary>Slope, b.</summary>
    public double Slope { get; }

    /// <summary>Sum of squared deviations of the positions, Sxx.</summary>
    public double PositionSumOfSquares { get; }

    /// <summary>Sum of squared residuals, RSS.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Sum of squared deviations of the values from their mean, Syy.</summary>
    public double ValueSumOfSquares { get; }

    /// <summary>Standard deviation of the points about the line, s.</summary>
    public double ResidualStandardDeviation =>
        Status == LineStatus.Determined ? Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom) : 0;

    /// <summary>Share of the scatter of the values that the line explains, R² = 1 − RSS/Syy; 0 where all values are equal.</summary>
    public double RSquared =>
        Status == LineStatus.Determined && ValueSumOfSquares > 0
            ? Math.Max(0, 1 - ResidualSumOfSquares / ValueSumOfSquares)
            : 0;

    /// <summary>Degrees of freedom, n − 2.</summary>
    public int DegreesOfFreedom => Count - 2;

    /// <summary>Value of the line at position 0, a = ȳ − b x̄.</summary>
    public double Intercept => MeanValue - Slope * MeanPosition;

    /// <summary>Standard error of the slope, s / sqrt(Sxx).</summary>
    public double SlopeStandardError =>
        Status == LineStatus.Determined ? ResidualStandardDeviation / Math.Sqrt(PositionSumOfSquares) : 0;

    /// <summary>Two-sided probability of a slope as large by chance alone, from Student's t.</summary>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public double SlopePValue
    {
        get
        {
            RequireDetermined();
            var error = SlopeStandardError;
            if (error <= 0)
            {
                return Slope == 0 ? 1 : 0;
            }

            return StudentDistribution.TwoSidedTail(Slope / error, DegreesOfFreedom);
        }
    }

    /// <inheritdoc/>
    public override string ToString() =>
        IsDetermined
            ? $"slope {PlainText.Number(Slope, SlopeStandardError)} ± {PlainText.Number(SlopeStandardError)}, "
                + $"level {PlainText.Number(Intercept, StandardErrorAt(0, BandKind.Mean))} at 0, {Count} points"
            : $"{PlainText.Spaced(Status)}: {Count}";

    /// <summary>Interval of the slope, b ± t s/sqrt(Sxx).</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one end.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public Interval SlopeInterval(double confidence, IntervalSide side = IntervalSide.Both)
    {
        RequireDetermined();
        var half = IntervalLevel.StudentQuantile(confidence, side, DegreesOfFreedom) * SlopeStandardError;
        return Interval.Between(Slope - half, Slope + half, confidence, side, coverageInDoubt: false);
    }

    /// <summary>Band about the line at a position, for the line itself or for one new reading.</summary>
    /// <param name="position">x.</param>
    /// <param name="of">Mean line (confidence band) or new reading (prediction band).</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one end.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The band at that position. It may reach below zero and is not clipped.</returns>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public Interval BandAt(double position, BandKind of, double confidence, IntervalSide side = IntervalSide.Both)
    {
        var half = IntervalLevel.StudentQuantile(confidence, side, DegreesOfFreedom) * StandardErrorAt(position, of);
        var value = ValueAt(position);
        return Interval.Between(value - half, value + half, confidence, side, coverageInDoubt: false);
    }

    /// <summary>What is left of each value above the line: for a check of its scatter.</summary>
    /// <param name="positions">x; n values.</param>
    /// <param name="values">y; n values.</param>
    /// <param name="residuals">Receives y − y(x); n values, in the order given.</param>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public void Residuals(ReadOnlySpan<double> positions, ReadOnlySpan<double> values, Span<double> residuals)
    {
        RequireDetermined();
        Numbers.CheckPairs(positions, values, nameof(positions), nameof(values));
        Guard.SameLength(residuals.Length, values.Length, nameof(residuals), nameof(values));
        for (var i = 0; i < values.Length; i++)
        {
            residuals[i] = values[i] - MeanValue - Slope * (positions[i] - MeanPosition);
        }
    }

    /// <summary>The line at a position.</summary>
    /// <param name="position">x.</param>
    /// <returns>y.</returns>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public double ValueAt(double position)
    {
        RequireDetermined();
        return MeanValue + Slope * (Guard.Finite(position, "") - MeanPosition);
    }

    /// <summary>Standard error at a position, of the mean line or of a new reading.</summary>
    /// <param name="position">x.</param>
    /// <param name="of">Mean line or new reading.</param>
    /// <returns>The standard error, in the unit of the values.</returns>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public double StandardErrorAt(double position, BandKind of)
    {
        RequireDetermined();
        var distance = Guard.Finite(position, "") - MeanPosition;
        return ResidualStandardDeviation * Math.Sqrt(Spread(of) + distance * distance / PositionSumOfSquares);
    }

    /// <summary>Half-width of the two-sided band at a position.</summary>
    /// <param name="position">x.</param>
    /// <param name="of">Mean line (confidence band) or new reading (prediction band).</param>
    /// <param name="confidence">Confidence level, above 0 and below 1.</param>
    /// <returns>The half-width, in the unit of the values.</returns>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public double BandHalfWidthAt(double position, BandKind of, double confidence)
    {
        var quantile = IntervalLevel.StudentQuantile(confidence, IntervalSide.Both, DegreesOfFreedom);
        return quantile * StandardErrorAt(position, of);
    }

    /// <summary>The chance that the value lies above a limit at a position, given the scatter seen.</summary>
    /// <param name="position">x.</param>
    /// <param name="limit">The limit, in the unit of the values.</param>
    /// <param name="of">Mean line or new reading.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public double ChanceAbove(double position, double limit, BandKind of)
    {
        var excess = ValueAt(position) - Guard.Finite(limit, "");
        var error = StandardErrorAt(position, of);
        if (error <= 0)
        {
            return excess > 0 ? 1 : 0;
        }

        return StudentDistribution.Cumulative(excess / error, DegreesOfFreedom);
    }

    /// <summary>The last position at which the chance of lying above a limit equals a given value, on a rising line.</summary>
    /// <remarks>
    /// Fieller's inversion: (b d − D)² = q² s² (K + d²/Sxx) with d = x − x̄, D = limit − ȳ, q the Student quantile of the chance,
    /// K = 1/n for the mean line and 1 + 1/n for a new reading. There is no such position when the slope is too uncertain:
    /// the chance then never rises that high, however long one waits.
    /// </remarks>
    /// <param name="limit">The limit, in the unit of the values.</param>
    /// <param name="chance">Chance of lying above the limit, above 0 and below 1.</param>
    /// <param name="of">Mean line or new reading.</param>
    /// <param name="position">The position, or 0 where there is none.</param>
    /// <returns>Whether there is such a position.</returns>
    /// <exception cref="InvalidOperationException">The line is not determined.</exception>
    public bool TryCrossing(double limit, double chance, BandKind of, out double position)
    {
        RequireDetermined();
        Guard.OpenUnitInterval(chance);
        var distanceToLimit = Guard.Finite(limit, "") - MeanValue;
        position = 0;
        if (!(Slope > 0))
        {
            return false;
        }

        var q = chance == 0.5 ? 0 : Quantile(chance);
        var scatter = q * ResidualStandardDeviation;
        var a = Slope * Slope - scatter * scatter / PositionSumOfSquares;
        var halfB = -Slope * distanceToLimit;

        // halfB² − a c, multiplied out: the plain form loses its digits where both terms are nearly equal.
        var discriminant =
            scatter * scatter * (a * Spread(of) + distanceToLimit * distanceToLimit / PositionSumOfSquares);
        if (discriminant < 0 || a == 0)
        {
            return false;
        }

        // Of the two roots of the squared equation, those that satisfy it unsquared: b d − D has the sign of q.
        var root = Math.Sqrt(discriminant);
        var found = false;
        foreach (var distance in stackalloc[] { (-halfB - root) / a, (-halfB + root) / a })
        {
            var side = Slope * distance - distanceToLimit;
            var satisfies = q == 0 || side == 0 || Math.Sign(side) == Math.Sign(q);
            if (satisfies && Guard.IsFinite(distance) && (!found || distance + MeanPosition > position))
            {
                position = distance + MeanPosition;
                found = true;
            }
        }

        // With a too uncertain slope a chance above one half is reached, if at all, only in passing: not a crossing.
        return found && !(q > 0 && a < 0);
    }

    private double Spread(BandKind of) => of == BandKind.NewReading ? 1 + 1.0 / Count : 1.0 / Count;

    private double Quantile(double probability) => StudentDistribution.Quantile(probability, (double)DegreesOfFreedom);

    private void RequireDetermined()
    {
        if (Status != LineStatus.Determined)
        {
            throw new InvalidOperationException($"The line is not determined: {Status}, {Count} points.");
        }
    }
}
