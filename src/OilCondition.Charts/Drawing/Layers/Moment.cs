namespace OilCondition.Charts.Drawing;

/// <summary>A moment, or another place on the level axis, over the whole height with its words above.</summary>
/// <param name="At">Where it lies on the level axis.</param>
/// <param name="Text">Its words.</param>
/// <param name="Ink">Its ink.</param>
/// <param name="Dash">Its line.</param>
internal sealed record Moment(double At, string Text, Ink Ink, Dash Dash);
