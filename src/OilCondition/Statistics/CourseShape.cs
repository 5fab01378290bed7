namespace OilCondition.Statistics;

/// <summary>The shapes of <see cref="Course"/>.</summary>
internal enum CourseShape
{
    Straight,
    Quadratic,
    Exponential,
    Runaway,
}
