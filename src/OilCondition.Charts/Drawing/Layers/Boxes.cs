namespace OilCondition.Charts.Drawing;

/// <summary>Rectangles, each given by two opposite corners.</summary>
internal sealed record Boxes(string? Key, Ink Ink, IReadOnlyList<Stroke> Corners, Ink? Outline = null) : Layer(Key, Ink)
{
    public override bool IsEmpty => Corners.Count == 0;
}
