namespace OilCondition.Statistics;

/// <summary>On which side an outlier is looked for.</summary>
public enum OutlierSide
{
    /// <summary>Far from the mean on either side.</summary>
    Both,

    /// <summary>The largest value only.</summary>
    Largest,

    /// <summary>The smallest value only.</summary>
    Smallest,
}
