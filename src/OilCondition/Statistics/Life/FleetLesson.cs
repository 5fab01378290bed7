namespace OilCondition.Statistics;

/// <summary>What other machines taught of one more of their kind.</summary>
/// <param name="Drift">Their mean drift, per time.</param>
/// <param name="DriftStandardDeviation">Standard deviation with which a further one's drift is foreseen.</param>
/// <param name="Scatter">For each movement of the family the scatter s² and its degrees of freedom.</param>
internal sealed record FleetLesson(
    double Drift,
    double DriftStandardDeviation,
    IReadOnlyList<(double Scale2, double DegreesOfFreedom)> Scatter
);
