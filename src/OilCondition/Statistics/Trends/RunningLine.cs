using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The least-squares line of the readings so far, as readings come one by one.</summary>
/// <remarks>
/// A reading moves the means, and each sum about them grows by what it lies off (Welford 1962). The residual sum of squares grows by the square of its distance from
/// the line so far over the variance of that distance, 1 + 1/n + d²/Sxx (Brown, Durbin and Evans 1975).
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal struct RunningLine
{
    private int count;
    private double meanPosition;
    private double meanValue;
    private double positionSquares;
    private double products;
    private double valueSquares;
    private double residualSquares;

    /// <summary>The line of the readings so far.</summary>
    public readonly StraightLine Line =>
        new(
            StraightLine.StatusOf(count, meanPosition, positionSquares),
            count,
            meanPosition,
            meanValue,
            Slope,
            positionSquares,
            residualSquares,
            valueSquares
        );

    private readonly double Slope => positionSquares > 0 ? products / positionSquares : 0;

    /// <summary>Takes a reading.</summary>
    /// <param name="position">x.</param>
    /// <param name="value">y.</param>
    public void Add(double position, double value)
    {
        var (right, up) = (position - meanPosition, value - meanValue);
        if (count > 0 && (positionSquares > 0 || right == 0))
        {
            // The first reading at another position turns the line towards it, and is never off.
            var off = up - Slope * right;
            var turn = positionSquares > 0 ? right * right / positionSquares : 0;
            residualSquares += off * off / (1 + 1.0 / count + turn);
        }

        count++;
        meanPosition += right / count;
        meanValue += up / count;
        positionSquares += right * (position - meanPosition);
        products += right * (value - meanValue);
        valueSquares += up * (value - meanValue);
    }
}
