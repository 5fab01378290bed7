namespace OilCondition.Charts.Drawing;

/// <summary>A text at its place.</summary>
/// <param name="Text">The text, clean.</param>
/// <param name="Left">Its left end in pixels.</param>
/// <param name="Baseline">Its base line in pixels.</param>
/// <param name="Size">Size of the letters in pixels.</param>
/// <param name="Ink">Its ink.</param>
internal sealed record Placed(string Text, double Left, double Baseline, float Size, Ink Ink)
{
    /// <summary>Its width in pixels.</summary>
    public double Width { get; } = Lettering.Width(Text, Size);
}
