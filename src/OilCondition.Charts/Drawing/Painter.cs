using System.Globalization;
using System.Text;
using ScottPlot;
using SkiaSharp;

namespace OilCondition.Charts.Drawing;

/// <summary>Draws a scene, each time afresh: the data by a plot of its own, the words from their places on the sheet.</summary>
internal sealed class Painter
{
    /// <summary>Typefaces of which one or other is on most machines; the first is that of the PNG.</summary>
    private const string Families = "'DejaVu Sans', Verdana, 'Segoe UI', Arial, sans-serif";

    private readonly Scene scene;
    private readonly int width;
    private readonly int height;
    private readonly Sheet sheet;

    public Painter(Scene scene, int width, int height)
    {
        this.scene = scene;
        this.width = width;
        this.height = height;
        sheet = new Sheet(scene, width, height);
    }

    public byte[] Png(float scale)
    {
        using var bitmap = new SKBitmap(
            (int)Math.Round(width * scale),
            (int)Math.Round(height * scale),
            SKColorType.Rgba8888,
            SKAlphaType.Premul
        );
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        canvas.Scale(scale);
        Paint(canvas);
        foreach (var text in sheet.Texts)
        {
            Lettering.Draw(canvas, text);
        }

        canvas.Flush();
        using var data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    public string Svg()
    {
        using var stream = new MemoryStream();
        using (var canvas = SKSvgCanvas.Create(SKRect.Create(width, height), stream))
        {
            Paint(canvas);
        }

        var drawn = Encoding.UTF8.GetString(stream.ToArray());
        var body = drawn.Substring(drawn.IndexOf('>', drawn.IndexOf("<svg", StringComparison.Ordinal)) + 1);
        body = body.Substring(0, body.LastIndexOf("</svg>", StringComparison.Ordinal)).Replace("\t", "");

        // Several charts in one page must not share identifiers.
        var words = Words();
        var id = "";
        body = Clips.Once(body, drawing => id = Identifier(drawing + words));
        return FormattableString.Invariant(
                $"<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\">\n"
            )
            + $"<title id=\"{id}-title\">{Clean(scene.Title)}</title>\n<desc id=\"{id}-desc\">{Clean(string.Join(" ", scene.Lines))}</desc>\n"
            + body.Trim()
            + $"\n<g font-family=\"{Families}\">\n{words}</g>\n</svg>\n";
    }

    private static string Clean(string text) => CleanText.Xml(CleanText.Of(text));

    /// <summary>A name that other drawings do not have: the FNV-1a hash of 64 bits (Fowler, Noll and Vo; constants as published).</summary>
    private static string Identifier(string text)
    {
        var hash = 14695981039346656037;
        foreach (var letter in text)
        {
            hash = unchecked((hash ^ letter) * 1099511628211);
        }

        return "c" + hash.ToString("x16", CultureInfo.InvariantCulture);
    }

    /// <summary>
    /// Each text with the width that it has in the typeface of this package, so that another one does not run over its neighbours; its own direction, so that a
    /// name from right to left turns no figures beside it.
    /// </summary>
    private string Words()
    {
        var words = new StringBuilder();
        foreach (var text in sheet.Texts)
        {
            words.Append(
                FormattableString.Invariant(
                    $"<text x=\"{text.Left:0.##}\" y=\"{text.Baseline:0.##}\" font-size=\"{text.Size}\" fill=\"{text.Ink.Hex}\" textLength=\"{text.Width:0.##}\" lengthAdjust=\"spacingAndGlyphs\" direction=\"ltr\" unicode-bidi=\"isolate\">"
                )
            );
            words.Append(CleanText.Xml(text.Text)).Append("</text>\n");
        }

        return words.ToString();
    }

    private void Paint(SKCanvas canvas)
    {
        using var plot = new Plot();
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Axes.Frameless();
        plot.HideGrid();
        plot.Layout.Fixed(
            new PixelPadding(
                (float)sheet.Left,
                (float)(width - sheet.Right),
                (float)(height - sheet.Bottom),
                (float)sheet.Top
            )
        );
        plot.Axes.SetLimits(sheet.LowX, sheet.HighX, sheet.LowY, sheet.HighY);
        if (scene.Empty is null)
        {
            AddGrid(plot);
            foreach (var layer in scene.Layers)
            {
                Add(plot, layer);
            }

            foreach (var level in scene.Levels.Where(level => level.Dash is not null && scene.Y.Shows(level.At)))
            {
                var y = scene.Y.Place(level.At);
                AddLine(
                    plot,
                    new Coordinates(sheet.LowX, y),
                    new Coordinates(sheet.HighX, y),
                    level.Ink,
                    level.Dash!.Value,
                    1.8f
                );
            }

            foreach (var moment in scene.Moments.Where(moment => scene.X.Shows(moment.At)))
            {
                var x = scene.X.Place(moment.At);
                AddLine(
                    plot,
                    new Coordinates(x, sheet.LowY),
                    new Coordinates(x, sheet.HighY),
                    moment.Ink,
                    moment.Dash,
                    1.3f
                );
            }
        }

        plot.Render(canvas, width, height);
        PaintFrame(canvas);
    }

    private void AddGrid(Plot plot)
    {
        foreach (var tick in sheet.TicksY.Where(_ => !scene.Y.HasRows))
        {
            AddLine(
                plot,
                new Coordinates(sheet.LowX, tick.At),
                new Coordinates(sheet.HighX, tick.At),
                Ink.Grid,
                Dash.Solid,
                1
            );
        }

        foreach (var tick in sheet.TicksX.Where(_ => !scene.X.HasRows))
        {
            AddLine(
                plot,
                new Coordinates(tick.At, sheet.LowY),
                new Coordinates(tick.At, sheet.HighY),
                Ink.Grid,
                Dash.Solid,
                1
            );
        }
    }

    private Coordinates Place(Spot spot) => new(scene.X.Place(spot.X), scene.Y.Place(spot.Y));

    private void Add(Plot plot, Layer layer)
    {
        switch (layer)
        {
            case { IsEmpty: true }:
                break;
            case Marks marks:
                var points = plot.Add.ScatterPoints(marks.Spots.Select(Place).ToArray(), marks.Ink.Color);
                points.MarkerStyle = Marker(marks);
                break;
            case Trace course:
                plot.Add.Plottable(
                    new PenLine(new Pen(course.Ink, course.Dash, course.Width), [.. course.Spots.Select(Place)])
                );
                break;
            case Shade area:
                Fill(plot, [.. area.Outline.Select(Place)], area.Ink, null);
                break;
            case Boxes boxes:
                foreach (var box in boxes.Corners)
                {
                    var (from, to) = (Place(box.From), Place(box.To));
                    Fill(plot, [from, new(to.X, from.Y), to, new(from.X, to.Y)], boxes.Ink, boxes.Outline);
                }

                break;
            case Strokes strokes:
                foreach (var stroke in strokes.Lines)
                {
                    AddLine(plot, Place(stroke.From), Place(stroke.To), strokes.Ink, strokes.Dash, strokes.Width);
                }

                break;
        }
    }

    private static void Fill(Plot plot, Coordinates[] corners, Ink ink, Ink? outline)
    {
        var shape = plot.Add.Polygon(corners);
        shape.FillColor = ink.Color;
        shape.LineStyle = LineStyle.None;
        shape.MarkerShape = MarkerShape.None;
        if (outline is not null)
        {
            plot.Add.Plottable(new PenLine(new Pen(outline, Dash.Solid, 1), [.. corners, corners[0]]));
        }
    }

    private static void AddLine(Plot plot, Coordinates from, Coordinates to, Ink ink, Dash dash, float size) =>
        plot.Add.Plottable(new PenLine(new Pen(ink, dash, size), [from, to]));

    private static MarkerStyle Marker(Marks marks) =>
        new(marks.Shape, marks.Size, marks.Ink.Color)
        {
            LineColor = marks.Ink.Color,
            LineWidth = 1.6f,
            FillColor = marks.Ink.Color,
            OutlineWidth = marks.Shape.ToString().StartsWith("Filled", StringComparison.Ordinal) ? 0 : 1.6f,
            OutlineColor = marks.Ink.Color,
        };

    /// <summary>Frame, ticks, leaders to the words of levels, and the symbols of the key.</summary>
    private void PaintFrame(SKCanvas canvas)
    {
        using var paint = ScottPlot.Paint.NewDisposablePaint();
        var frame = new Pen(Ink.Frame, Dash.Solid, 1);
        void Draw(double fromX, double fromY, double toX, double toY, Pen pen) =>
            pen.Draw(canvas, [new Pixel((float)fromX, (float)fromY), new Pixel((float)toX, (float)toY)]);

        Draw(sheet.Left, sheet.Top, sheet.Left, sheet.Bottom, frame);
        Draw(sheet.Left, sheet.Bottom, sheet.Right, sheet.Bottom, frame);
        if (scene.Empty is not null)
        {
            return;
        }

        foreach (var tick in sheet.TicksX)
        {
            Draw(sheet.PixelX(tick.At), sheet.Bottom, sheet.PixelX(tick.At), sheet.Bottom + 5, frame);
        }

        foreach (var tick in sheet.TicksY)
        {
            Draw(sheet.Left - 5, sheet.PixelY(tick.At), sheet.Left, sheet.PixelY(tick.At), frame);
        }

        foreach (var (from, to, ink) in sheet.Leaders)
        {
            Draw(sheet.Right, from, sheet.Right + Sheet.LeaderWidth - 4, to, new Pen(ink, Dash.Solid, 1));
        }

        foreach (var (layer, x, y) in sheet.Symbols)
        {
            PaintSymbol(canvas, paint, layer, (float)x, (float)y);
        }
    }

    private static void PaintSymbol(SKCanvas canvas, ScottPlot.Paint paint, Layer layer, float x, float y)
    {
        void Line(Pen pen) => pen.Draw(canvas, [new Pixel(x - 11, y), new Pixel(x + 11, y)]);
        void Box(Ink ink, Ink? outline)
        {
            var box = new PixelRect(x - 9, x + 9, y + 5, y - 5);
            ScottPlot.Drawing.FillRectangle(canvas, box, paint, new FillStyle { Color = ink.Color });
            if (outline is not null)
            {
                new Pen(outline, Dash.Solid, 1).Draw(
                    canvas,
                    [box.TopLeft, box.TopRight, box.BottomRight, box.BottomLeft, box.TopLeft]
                );
            }
        }

        switch (layer)
        {
            case Marks marks:
                ScottPlot.Drawing.DrawMarker(
                    canvas,
                    paint,
                    new Pixel(x, y),
                    Marker(marks with { Size = Math.Max(6, marks.Size) })
                );
                break;
            case Trace course:
                Line(new Pen(course.Ink, course.Dash, course.Width));
                break;
            case Strokes strokes:
                Line(new Pen(strokes.Ink, strokes.Dash, Math.Min(8, strokes.Width)));
                break;
            case Shade area:
                Box(area.Ink, null);
                break;
            case Boxes boxes:
                Box(boxes.Ink, boxes.Outline);
                break;
        }
    }
}
