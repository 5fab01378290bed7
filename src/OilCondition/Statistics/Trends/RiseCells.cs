namespace OilCondition.Statistics;

/// <summary>The rises that readings have under each correlation and course of a <see cref="RiseDesign"/>, in columns.</summary>
/// <param name="room">Room for all columns.</param>
/// <param name="count">How many rises there are.</param>
internal readonly ref struct RiseCells(Span<double> room, int count)
{
    public const int Columns = 5;

    /// <summary>Logarithms of the weights; the weights themselves once those that matter are kept.</summary>
    public Span<double> Weights { get; } = room[..count];

    public Span<double> Rises { get; } = room.Slice(count, count);

    /// <summary>Squares of the standard errors of the rises.</summary>
    public Span<double> Variances { get; } = room.Slice(2 * count, count);

    /// <summary>Variances of a reading about its course.</summary>
    public Span<double> Scatters { get; } = room.Slice(3 * count, count);

    public Span<double> Correlations { get; } = room.Slice(4 * count, count);

    /// <summary>Keeps those that are not negligible beside the likeliest, and makes weights of their logarithms, together 1; behind them nothing up to a full four.</summary>
    /// <returns>How many there are.</returns>
    public int KeepThatMatter(double negligible)
    {
        var highest = LaneMath.Load(Weights, 0);
        for (var i = LaneMath.Width; i < Weights.Length; i += LaneMath.Width)
        {
            highest = LaneMath.Max(highest, LaneMath.Load(Weights, i));
        }

        var best = LaneMath.Of(LaneMath.Largest(highest));
        for (var i = 0; i < Weights.Length; i += LaneMath.Width)
        {
            LaneMath.Store(LaneMath.Exp(LaneMath.Load(Weights, i) - best), Weights, i);
        }

        var kept = 0;
        double sum = 0;
        for (var i = 0; i < Weights.Length; i++)
        {
            if (!(Weights[i] >= negligible))
            {
                continue;
            }

            sum += Weights[i];
            Weights[kept] = Weights[i];
            Rises[kept] = Rises[i];
            Variances[kept] = Variances[i];
            Scatters[kept] = Scatters[i];
            Correlations[kept++] = Correlations[i];
        }

        foreach (ref var weight in Weights[..kept])
        {
            weight /= sum;
        }

        for (var i = kept; i % LaneMath.Width != 0; i++)
        {
            (Weights[i], Rises[i], Variances[i]) = (0, 0, 0);
        }

        return kept;
    }
}
