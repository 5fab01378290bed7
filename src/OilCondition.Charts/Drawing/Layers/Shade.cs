namespace OilCondition.Charts.Drawing;

/// <summary>A filled area with its outline.</summary>
internal sealed record Shade(string? Key, Ink Ink, IReadOnlyList<Spot> Outline) : Layer(Key, Ink)
{
    public override bool IsEmpty => Outline.Count < 3;
}
