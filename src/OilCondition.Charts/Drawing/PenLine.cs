using ScottPlot;

namespace OilCondition.Charts.Drawing;

/// <summary>A line through places of the data.</summary>
internal sealed class PenLine(Pen pen, IReadOnlyList<Coordinates> places) : IPlottable
{
    public bool IsVisible { get; set; } = true;

    public IAxes Axes { get; set; } = new Axes();

    public IEnumerable<LegendItem> LegendItems => [];

    public AxisLimits GetAxisLimits() => AxisLimits.NoLimits;

    public void Render(RenderPack rp) => pen.Draw(rp.Canvas, [.. places.Select(Axes.GetPixel)]);
}
