using OilCondition.Treatment;

namespace OilCondition;

/// <summary>An oil of a station file, by its id.</summary>
internal sealed record StationOil(string Id, Oil Oil, TreatedOil? Treated);
