using ScottPlot;
using SkiaSharp;

namespace OilCondition.Charts.Drawing;

/// <summary>Draws lines, dashed ones dash by dash: an SVG from the drawing library has no dashes of its own.</summary>
/// <param name="Ink">Its ink.</param>
/// <param name="Dash">How the line is drawn.</param>
/// <param name="Width">Its width in pixels.</param>
internal sealed record Pen(Ink Ink, Dash Dash, float Width)
{
    /// <summary>Lengths of dash and gap in widths of the line.</summary>
    private (double On, double Off) Pattern =>
        Dash switch
        {
            Dash.Long => (7, 3.5),
            Dash.Short => (3.5, 2),
            _ => (1.2, 2.2),
        };

    public void Draw(SKCanvas canvas, IReadOnlyList<Pixel> pixels)
    {
        using var path = Dash == Dash.Solid ? Whole(pixels) : Dashes(pixels);
        using var paint = new SKPaint
        {
            Color = SKColor.Parse(Ink.Hex).WithAlpha((byte)Math.Round(255 * Ink.Opacity)),
            StrokeWidth = Width,
            IsStroke = true,
            IsAntialias = true,
            StrokeJoin = SKStrokeJoin.Round,
        };
        canvas.DrawPath(path, paint);
    }

    private static SKPath Whole(IReadOnlyList<Pixel> pixels)
    {
        var path = new SKPath();
        path.MoveTo(pixels[0].X, pixels[0].Y);
        foreach (var pixel in pixels.Skip(1))
        {
            path.LineTo(pixel.X, pixel.Y);
        }

        return path;
    }

    private SKPath Dashes(IReadOnlyList<Pixel> pixels)
    {
        var path = new SKPath();
        var (on, off) = (Pattern.On * Math.Max(1.2, Width), Pattern.Off * Math.Max(1.2, Width));
        var walked = 0.0;
        for (var i = 1; i < pixels.Count; i++)
        {
            var (from, to) = (pixels[i - 1], pixels[i]);
            var (x, y) = ((double)to.X - from.X, (double)to.Y - from.Y);
            var length = Math.Sqrt(x * x + y * y);
            for (var begin = Math.Floor(walked / (on + off)) * (on + off); begin < walked + length; begin += on + off)
            {
                var (start, end) = (Math.Max(begin, walked) - walked, Math.Min(begin + on, walked + length) - walked);
                if (end > start)
                {
                    path.MoveTo((float)(from.X + x * start / length), (float)(from.Y + y * start / length));
                    path.LineTo((float)(from.X + x * end / length), (float)(from.Y + y * end / length));
                }
            }

            walked += length;
        }

        return path;
    }
}
