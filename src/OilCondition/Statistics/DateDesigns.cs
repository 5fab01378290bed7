namespace OilCondition.Statistics;

/// <summary>
/// What fits over the same dates have in common, worked out once: measurands of one machine are mostly read from the same samples. The latest of each kind is kept, for as long as
/// one assessment takes.
/// </summary>
internal sealed class DateDesigns
{
    private FamilyDesign? family;
    private RiseDesign? plain;
    private RiseDesign? seasonal;

    /// <summary>The family of movements over some times, as parts of that from the first to the last.</summary>
    public FamilyDesign Family(double[] positions) =>
        family is not null && family.IsOver(positions) ? family : family = new FamilyDesign(positions);

    /// <summary>A rise over some times.</summary>
    /// <param name="times">When readings were taken, ascending.</param>
    /// <param name="period">Period of the season beside it; null for none.</param>
    /// <param name="isSeasonFound">Whether the season was found and its size is free; otherwise it only may be there.</param>
    public RiseDesign Rise(double[] times, double? period, bool isSeasonFound)
    {
        ref var kept = ref period is null ? ref plain : ref seasonal;
        return kept?.IsOf(times, period, isSeasonFound) == true
            ? kept
            : kept = new RiseDesign(times, period, isSeasonFound);
    }
}
