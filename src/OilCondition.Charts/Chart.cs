using OilCondition.Charts.Drawing;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>A chart that can be written as SVG and as PNG, with a title and a text that tells the same to those who do not see it.</summary>
/// <remarks>
/// Immutable. Each drawing starts afresh and uses the typeface in this package, so that the same chart gives the same bytes, whatever the culture, the time
/// zone and the fonts of a machine are.
/// </remarks>
/// <example>
/// <code>
/// var chart = TrendChart.Of(assessment, Measurands.AcidNumber);
/// File.WriteAllText("acid-number.svg", chart.ToSvg());
/// </code>
/// </example>
public sealed class Chart
{
    internal Chart(Scene scene, int width, int height)
    {
        Scene = scene;
        Width = width;
        Height = height;
    }

    internal Chart(Scene scene, ChartOptions options)
        : this(scene, options.Width, options.Height) { }

    internal Scene Scene { get; }

    /// <summary>What the chart is of.</summary>
    public string Title => CleanText.Of(Scene.Title);

    /// <summary>The text alternative: what the chart shows, with its figures.</summary>
    public string Description => CleanText.Of(string.Join(" ", Scene.Lines));

    /// <summary>Width in pixels.</summary>
    public int Width { get; }

    /// <summary>Height in pixels.</summary>
    public int Height { get; }

    /// <summary>The same chart in another size.</summary>
    /// <param name="width">Width, 480 to 4000 pixels.</param>
    /// <param name="height">Height, 320 to 4000 pixels.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A size lies outside its range.</exception>
    public Chart WithSize(int width, int height) =>
        new(
            Scene,
            ChartOptions.Side(width, ChartOptions.LeastWidth, nameof(width)),
            ChartOptions.Side(height, ChartOptions.LeastHeight, nameof(height))
        );

    /// <summary>The chart as an SVG document with title and description, to be written to a file or put into a page.</summary>
    /// <remarks>Texts stay texts: they can be searched and read aloud. Several of them fit into one page, since no two share an identifier.</remarks>
    /// <returns>One <c>svg</c> element without an XML declaration.</returns>
    public string ToSvg() => new Painter(Scene, Width, Height).Svg();

    /// <summary>The chart as a PNG picture on a white ground.</summary>
    /// <param name="scale">Dots for each pixel of the size, 0.5 to 4: 2 for sharp screens, 3 for print.</param>
    /// <returns>The bytes of the file.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The scale lies outside its range.</exception>
    public byte[] ToPng(double scale = 1) =>
        new Painter(Scene, Width, Height).Png((float)Guard.InRange(scale, 0.5, 4, "dots per pixel"));

    /// <summary>Title and description.</summary>
    /// <returns>For example <c>HP-TGB1 turbine guide bearing: acid number. 0.32 mgKOH/g on 2026-01-03, alert.</c></returns>
    public override string ToString() => Description.Length == 0 ? Title : $"{Title}. {Description}";
}
