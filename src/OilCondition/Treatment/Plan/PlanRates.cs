namespace OilCondition.Treatment;

/// <summary>What goes on at one temperature and content of the tank; SI units.</summary>
internal readonly record struct PlanRates(
    double FlowCubicMetrePerSecond,
    double OilKilogramPerSecond,
    double ProcessCelsius,
    double HeaterWatts,
    bool IsHeldToRise,
    double LossWatts,
    StagePass Pass,
    double CondensedKilogramPerSecond
);
