namespace OilCondition;

/// <summary>An event of a station file with the machine that it happened to.</summary>
internal sealed record StationEvent(string Machine, OilEvent Event);
