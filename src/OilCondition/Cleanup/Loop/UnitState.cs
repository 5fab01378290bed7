namespace OilCondition.Cleanup;

/// <summary>How a unit may run: oil temperature and absolute pressure in the chamber, and what part of the planned sweep air and oil flow there is.</summary>
internal readonly record struct UnitState(double Celsius, double Pascal, double SweepShare, double FlowShare);
