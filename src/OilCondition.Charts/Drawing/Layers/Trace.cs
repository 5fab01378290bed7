namespace OilCondition.Charts.Drawing;

/// <summary>A line through places.</summary>
internal sealed record Trace(string? Key, Ink Ink, Dash Dash, IReadOnlyList<Spot> Spots, float Width = 2)
    : Layer(Key, Ink)
{
    public override bool IsEmpty => Spots.Count < 2;
}
