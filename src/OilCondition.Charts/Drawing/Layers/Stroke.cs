namespace OilCondition.Charts.Drawing;

/// <summary>A stroke from one place to another.</summary>
internal readonly record struct Stroke(Spot From, Spot To);
