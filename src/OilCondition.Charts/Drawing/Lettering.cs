using SkiaSharp;

namespace OilCondition.Charts.Drawing;

/// <summary>The typeface in this package: the widths of texts, their breaking into lines, and their drawing.</summary>
internal static class Lettering
{
    /// <summary>Below it a size is hard to read.</summary>
    public const float Small = 11;
    public const float Normal = 12;
    public const float Large = 16;

    private const string Ellipsis = "…";

    private static readonly Lazy<SKTypeface> Face = new(() =>
    {
        using var stream = typeof(Lettering).Assembly.GetManifestResourceStream("DejaVuSans.ttf")!;
        using var data = SKData.Create(stream);
        return SKTypeface.FromData(data);
    });

    public static double Width(string text, float size)
    {
        using var font = Font(size);
        return font.MeasureText(text);
    }

    public static void Draw(SKCanvas canvas, Placed text)
    {
        using var font = Font(text.Size);
        using var paint = new SKPaint { Color = SKColor.Parse(text.Ink.Hex), IsAntialias = true };
        canvas.DrawText(text.Text, (float)text.Left, (float)text.Baseline, SKTextAlign.Left, font, paint);
    }

    /// <summary>The height of a line of text.</summary>
    public static double Line(float size) => Math.Ceiling(size * 1.35);

    /// <summary>A text in lines of at most a width, at most so many; the last one ends in … where there is more.</summary>
    public static IReadOnlyList<string> Wrap(string text, float size, double width, int most)
    {
        var words = text.Split([' '], StringSplitOptions.RemoveEmptyEntries);
        var lines = new List<string>();
        var line = "";
        for (var i = 0; i < words.Length; i++)
        {
            var longer = line.Length == 0 ? words[i] : $"{line} {words[i]}";
            if (line.Length == 0 || Width(longer, size) <= width)
            {
                line = longer;
                continue;
            }

            if (lines.Count + 1 == most)
            {
                lines.Add(Cut($"{line} {words[i]}{Ellipsis}", size, width));
                return lines;
            }

            lines.Add(Cut(line, size, width));
            line = words[i];
        }

        lines.Add(Cut(line, size, width));
        return lines;
    }

    /// <summary>A text that ends in … where it is wider than a width.</summary>
    public static string Cut(string text, float size, double width)
    {
        if (Width(text, size) <= width)
        {
            return text;
        }

        var length = text.Length;
        while (length > 0 && Width(text.Remove(length) + Ellipsis, size) > width)
        {
            length -= length > 1 && char.IsLowSurrogate(text[length - 1]) ? 2 : 1;
        }

        return text.Remove(length).TrimEnd() + Ellipsis;
    }

    private static SKFont Font(float size) =>
        new(Face.Value, size)
        {
            Subpixel = true,
            Hinting = SKFontHinting.None,
            Edging = SKFontEdging.Antialias,
        };
}
