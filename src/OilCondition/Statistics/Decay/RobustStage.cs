namespace OilCondition.Statistics;

/// <summary>How outliers are weighed in one step of the iteration.</summary>
internal enum RobustStage
{
    None,
    Huber,
    Biweight,
}
