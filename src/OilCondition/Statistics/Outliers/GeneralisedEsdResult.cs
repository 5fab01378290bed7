namespace OilCondition.Statistics;

/// <summary>What a generalised ESD test found.</summary>
internal sealed class GeneralisedEsdResult
{
    internal GeneralisedEsdResult(IReadOnlyList<EsdStep> steps)
    {
        Steps = steps;
        var count = 0;
        for (var i = 0; i < steps.Count; i++)
        {
            if (steps[i].Statistic > steps[i].CriticalValue)
            {
                count = i + 1;
            }
        }

        int[] outliers = count == 0 ? [] : new int[count];
        for (var i = 0; i < count; i++)
        {
            outliers[i] = steps[i].Index;
        }

        Outliers = outliers;
    }

    /// <summary>All steps, the most distant value first.</summary>
    public IReadOnlyList<EsdStep> Steps { get; }

    /// <summary>Indexes of the outliers, the most distant first: those of all steps up to the last one whose R passes its λ.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>Whether as many were found as were looked for: there may be more.</summary>
    public bool MorePossible => Outliers.Count == Steps.Count;
}
