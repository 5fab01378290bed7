namespace OilCondition.Statistics;

/// <summary>Which readings a trend rests on, in the caller's order.</summary>
internal sealed record TrendReadings(
    IReadOnlyList<int> Used,
    IReadOnlyList<int> Outliers,
    IReadOnlyList<TrendAssessment.LevelChange> Changes,
    bool LatestIsWild
);
