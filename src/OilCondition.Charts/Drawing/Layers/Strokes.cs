namespace OilCondition.Charts.Drawing;

/// <summary>Strokes of their own, such as the intervals of bars; without any the key tells of lines that moments draw.</summary>
internal sealed record Strokes(string? Key, Ink Ink, Dash Dash, IReadOnlyList<Stroke> Lines, float Width = 2)
    : Layer(Key, Ink);
