namespace OilCondition.Statistics;

/// <summary>Ordinary least squares through points: y = a + b x with independent scatter of constant size.</summary>
public readonly partial record struct StraightLine
{
    /// <summary>Fits a straight line.</summary>
    /// <param name="positions">x, in any unit; n values in any order.</param>
    /// <param name="values">y, in any unit; n values.</param>
    /// <returns>The fit, or the reason why there is none.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100.</exception>
    public static StraightLine Fit(ReadOnlySpan<double> positions, ReadOnlySpan<double> values)
    {
        Numbers.CheckPairs(positions, values, nameof(positions), nameof(values));
        var count = positions.Length;
        if (count < 3)
        {
            return new StraightLine(LineStatus.TooFewReadings, count, 0, 0, 0, 0, 0, 0);
        }

        var meanX = Numbers.Mean(positions);
        var meanY = Numbers.Mean(values);
        double sxx = 0;
        double sxy = 0;
        for (var i = 0; i < count; i++)
        {
            var dx = positions[i] - meanX;
            sxx += dx * dx;
            sxy += dx * (values[i] - meanY);
        }

        if (StatusOf(count, meanX, sxx) != LineStatus.Determined)
        {
            return new StraightLine(LineStatus.SamePosition, count, meanX, meanY, 0, 0, 0, 0);
        }

        var slope = sxy / sxx;
        double residual = 0;
        for (var i = 0; i < count; i++)
        {
            var r = values[i] - meanY - slope * (positions[i] - meanX);
            residual += r * r;
        }

        return new StraightLine(
            LineStatus.Determined,
            count,
            meanX,
            meanY,
            slope,
            sxx,
            residual,
            Numbers.SumOfSquaresAbout(values, meanY)
        );
    }

    /// <summary>Whether points carry a line: positions that differ only in the last bits carry no slope.</summary>
    internal static LineStatus StatusOf(int count, double meanPosition, double positionSumOfSquares) =>
        count < 3 ? LineStatus.TooFewReadings
        : positionSumOfSquares > count * 1e-24 * (meanPosition * meanPosition + double.Epsilon)
        && positionSumOfSquares > 0
            ? LineStatus.Determined
        : LineStatus.SamePosition;
}
