using ScottPlot;

namespace OilCondition.Charts.Drawing;

/// <summary>Marks at places.</summary>
internal sealed record Marks(string? Key, Ink Ink, MarkerShape Shape, IReadOnlyList<Spot> Spots, float Size = 8)
    : Layer(Key, Ink)
{
    public override bool IsEmpty => Spots.Count == 0;
}
