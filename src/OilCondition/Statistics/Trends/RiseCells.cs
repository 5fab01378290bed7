namespace OilCondition.Statistics;

/// <summary>The rises that readings have under each correlation and course of a <see cref="RiseDesign"/>, in columns.</summary>
internal readonly ref struct RiseCells(Span<double> room)
{
    public const int Columns = 5;
    private readonly Span<double> room = room;

    /// <summary>Logarithms of the weights; the weights themselves once those that matter are kept.</summary>
    public Span<double> LogWeights => Column(0);

    public Span<double> Rises => Column(1);

    /// <summary>Squares of the standard errors of the rises.</summary>
    public Span<double> Variances => Column(2);

    /// <summary>Variances of a reading about its course.</summary>
    public Span<double> Scatters => Column(3);

    public Span<double> Correlations => Column(4);

    /// <summary>Keeps those that are not negligible beside the likeliest, and makes weights of their logarithms, together 1.</summary>
    /// <returns>How many there are.</returns>
    public int KeepThatMatter(double negligible)
    {
        var logs = LogWeights;
        var best = double.NegativeInfinity;
        foreach (var log in logs)
        {
            best = Math.Max(best, log);
        }

        var lowest = best + Math.Log(negligible);
        var kept = 0;
        double sum = 0;
        for (var i = 0; i < logs.Length; i++)
        {
            if (!(logs[i] >= lowest))
            {
                continue;
            }

            logs[kept] = Math.Exp(logs[i] - best);
            sum += logs[kept];
            Rises[kept] = Rises[i];
            Variances[kept] = Variances[i];
            Scatters[kept] = Scatters[i];
            Correlations[kept++] = Correlations[i];
        }

        foreach (ref var weight in logs[..kept])
        {
            weight /= sum;
        }

        return kept;
    }

    private Span<double> Column(int index) => room.Slice(index * (room.Length / Columns), room.Length / Columns);
}
