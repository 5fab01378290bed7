using ScottPlot;

namespace OilCondition.Charts.Drawing;

/// <summary>A place in the plane of the data, in the units of the axes; moments as days.</summary>
internal readonly record struct Spot(double X, double Y);

/// <summary>A stroke from one place to another.</summary>
internal readonly record struct Stroke(Spot From, Spot To);

/// <summary>How a line is drawn.</summary>
internal enum Dash
{
    Solid,
    Long,
    Short,
    Dots,
}

/// <summary>Something in the plane of the data, with its words in the key; layers are drawn in their order.</summary>
/// <param name="Key">What the key calls it; null where another layer stands for it.</param>
/// <param name="Ink">Its ink.</param>
internal abstract record Layer(string? Key, Ink Ink)
{
    /// <summary>Whether it shows nothing, so that the key need not tell of it.</summary>
    public virtual bool IsEmpty => false;
}

/// <summary>Marks at places.</summary>
internal sealed record Marks(string? Key, Ink Ink, MarkerShape Shape, IReadOnlyList<Spot> Spots, float Size = 8)
    : Layer(Key, Ink)
{
    public override bool IsEmpty => Spots.Count == 0;
}

/// <summary>A line through places.</summary>
internal sealed record Trace(string? Key, Ink Ink, Dash Dash, IReadOnlyList<Spot> Spots, float Width = 2)
    : Layer(Key, Ink)
{
    public override bool IsEmpty => Spots.Count < 2;
}

/// <summary>A filled area with its outline.</summary>
internal sealed record Shade(string? Key, Ink Ink, IReadOnlyList<Spot> Outline) : Layer(Key, Ink)
{
    public override bool IsEmpty => Outline.Count < 3;
}

/// <summary>Rectangles, each given by two opposite corners.</summary>
internal sealed record Boxes(string? Key, Ink Ink, IReadOnlyList<Stroke> Corners, Ink? Outline = null) : Layer(Key, Ink)
{
    public override bool IsEmpty => Corners.Count == 0;
}

/// <summary>Strokes of their own, such as the intervals of bars; without any the key tells of lines that moments draw.</summary>
internal sealed record Strokes(string? Key, Ink Ink, Dash Dash, IReadOnlyList<Stroke> Lines, float Width = 2)
    : Layer(Key, Ink);

/// <summary>A level across the whole width with its words beside it.</summary>
/// <param name="At">Where it lies on the upright axis.</param>
/// <param name="Text">Its words.</param>
/// <param name="Ink">Its ink.</param>
/// <param name="Dash">Its line; null for words without a line.</param>
internal sealed record LevelMark(double At, string Text, Ink Ink, Dash? Dash);

/// <summary>A moment, or another place on the level axis, over the whole height with its words above.</summary>
/// <param name="At">Where it lies on the level axis.</param>
/// <param name="Text">Its words.</param>
/// <param name="Ink">Its ink.</param>
/// <param name="Dash">Its line.</param>
internal sealed record Moment(double At, string Text, Ink Ink, Dash Dash);
