namespace OilCondition.Statistics;

/// <summary>How much a reading says about its value.</summary>
public enum Censoring
{
    /// <summary>The value itself.</summary>
    None,

    /// <summary>Only that the value lies below the figure: '&lt; 5'.</summary>
    Below,

    /// <summary>Only that the value lies above the figure: '&gt; 1000'.</summary>
    Above,
}
