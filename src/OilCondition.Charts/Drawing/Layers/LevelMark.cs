namespace OilCondition.Charts.Drawing;

/// <summary>A level across the whole width with its words beside it.</summary>
/// <param name="At">Where it lies on the upright axis.</param>
/// <param name="Text">Its words.</param>
/// <param name="Ink">Its ink.</param>
/// <param name="Dash">Its line; null for words without a line.</param>
internal sealed record LevelMark(double At, string Text, Ink Ink, Dash? Dash);
