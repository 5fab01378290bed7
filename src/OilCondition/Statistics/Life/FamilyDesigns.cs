namespace OilCondition.Statistics;

/// <summary>The design of the family over the dates that were last asked for: measurands of one machine are mostly read from the same samples.</summary>
internal sealed class FamilyDesigns
{
    private FamilyDesign? latest;

    /// <summary>The family over some times, as parts of that from the first to the last.</summary>
    public FamilyDesign Of(double[] positions) =>
        latest is not null && latest.IsOver(positions) ? latest : latest = new FamilyDesign(positions);
}
