namespace OilCondition.Statistics;

/// <summary>The designs of a rise over the dates that were last asked for, with and without a season: measurands of one machine are mostly read from the same samples.</summary>
internal sealed class RiseDesigns
{
    private RiseDesign? plain;
    private RiseDesign? seasonal;

    /// <summary>A rise over some times.</summary>
    /// <param name="times">When readings were taken, ascending.</param>
    /// <param name="period">Period of the season beside it; null for none.</param>
    /// <param name="isSeasonFound">Whether the season was found and its size is free; otherwise it only may be there.</param>
    public RiseDesign Of(double[] times, double? period, bool isSeasonFound)
    {
        ref var kept = ref plain;
        if (period is not null)
        {
            kept = ref seasonal;
        }

        return kept is not null && kept.IsOf(times, period, isSeasonFound)
            ? kept
            : kept = new RiseDesign(times, period, isSeasonFound);
    }
}
