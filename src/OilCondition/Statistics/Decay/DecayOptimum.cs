namespace OilCondition.Statistics;

/// <summary>The best of the minima found so far.</summary>
internal struct DecayOptimum
{
    private double latest;

    public DecayAtRate Curve { get; private set; }

    /// <summary>−1 if it is the slowest rate of the search, 1 if the fastest, else 0.</summary>
    public int Limit { get; private set; }

    public DecaySums Sums { get; private set; }

    /// <summary>Whether the best one is free and so close to a minimum of a scan that it is the same.</summary>
    public readonly bool IsNear(double logRate, double step) =>
        Curve.ScaledRate > 0 && Math.Abs(Math.Log(Curve.ScaledRate) - logRate) < step;

    /// <summary>Takes a minimum if it is the first or lower than the best one.</summary>
    public void Keep(in DecayAtRate found, int limit, in DecaySums sums)
    {
        latest = found.ScaledRate;
        if (Curve.ScaledRate == 0 || found.ResidualSumOfSquares < Curve.ResidualSumOfSquares)
        {
            Curve = found;
            Limit = limit;
            Sums = sums;
        }
    }

    /// <summary>Notes that the drops in the columns were overwritten.</summary>
    public void LoseDrops() => latest = 0;

    /// <summary>Takes the pass again where the drops in the columns are not those of the best one.</summary>
    public void Settle(in DecayColumns columns, in DecayShape shape)
    {
        if (Curve.ScaledRate != latest)
        {
            Sums = columns.WithDerivatives(Curve.ScaledRate);
            Curve = shape.Best(Sums, Curve.ScaledRate);
        }
    }
}
