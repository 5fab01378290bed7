namespace OilCondition.Statistics;

/// <summary>The designs of a rise over the dates that were last asked for, alone and with a season: measurands of one machine are mostly read from the same samples.</summary>
internal sealed class RiseDesigns : IDisposable
{
    private RiseDesign? plain;
    private RiseDesign? seasonal;

    /// <summary>A rise over some times, until others are asked for.</summary>
    /// <param name="times">When readings were taken, ascending.</param>
    /// <param name="period">Period of a season that was found beside it; null for none.</param>
    public RiseDesign Of(double[] times, double? period)
    {
        ref var kept = ref plain;
        if (period is not null)
        {
            kept = ref seasonal;
        }

        if (kept is null || !kept.IsOf(times, period))
        {
            kept?.Release();
            kept = new RiseDesign(times, period);
        }

        return kept;
    }

    /// <summary>Gives the memory of all designs back.</summary>
    public void Dispose()
    {
        plain?.Release();
        seasonal?.Release();
        (plain, seasonal) = (null, null);
    }
}
