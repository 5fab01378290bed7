namespace OilCondition.Statistics;

/// <summary>The designs of the family over the dates that were asked for: measurands of one machine are mostly read from the same samples.</summary>
internal sealed class FamilyDesigns : IDisposable
{
    private readonly List<FamilyDesign> all = new(1);

    /// <summary>The family over some times, as parts of that from the first to the last.</summary>
    public FamilyDesign Of(ReadOnlySpan<double> positions)
    {
        foreach (var one in all)
        {
            if (one.IsOver(positions))
            {
                return one;
            }
        }

        all.Add(new FamilyDesign(positions.ToArray()));
        return all[all.Count - 1];
    }

    /// <summary>Gives back the room of the designs; fits over them can read nothing any more.</summary>
    public void Dispose()
    {
        foreach (var one in all)
        {
            one.Dispose();
        }

        all.Clear();
    }
}
