namespace OilCondition.Statistics;

/// <summary>Values cut into runs of constant level.</summary>
public sealed class SegmentationResult
{
    internal SegmentationResult(
        IReadOnlyList<Segment> segments,
        double penalty,
        double cost,
        double residualSumOfSquares
    )
    {
        Segments = segments;
        Penalty = penalty;
        Cost = cost;
        ResidualSumOfSquares = residualSumOfSquares;
    }

    /// <summary>The runs, in the order of the values; one if there is no change.</summary>
    public IReadOnlyList<Segment> Segments { get; }

    /// <summary>Number of changes.</summary>
    public int ChangeCount => Segments.Count - 1;

    /// <summary>The penalty per change that was used: it decides how many there are.</summary>
    public double Penalty { get; }

    /// <summary>The least cost: residual sum of squares plus penalty × changes.</summary>
    public double Cost { get; }

    /// <summary>Sum of squared distances of the values from the means of their runs.</summary>
    public double ResidualSumOfSquares { get; }
}
