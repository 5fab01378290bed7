namespace OilCondition.Charts.Drawing;

/// <summary>A place on an axis with its words.</summary>
internal readonly record struct Tick(double At, string Text);
