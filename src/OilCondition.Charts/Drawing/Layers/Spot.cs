namespace OilCondition.Charts.Drawing;

/// <summary>A place in the plane of the data, in the units of the axes; moments as days.</summary>
internal readonly record struct Spot(double X, double Y);
