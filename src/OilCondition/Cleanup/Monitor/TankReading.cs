namespace OilCondition.Cleanup;

/// <summary>Oil temperature of the tank, and for how long it has been that warm.</summary>
/// <param name="Celsius">As its thermometer reads.</param>
/// <param name="SettledHours">Hours since it was colder by more than 5 K.</param>
internal readonly record struct TankReading(double Celsius, double SettledHours);
