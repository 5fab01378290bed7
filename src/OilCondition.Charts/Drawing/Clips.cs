using System.Globalization;
using System.Text.RegularExpressions;

namespace OilCondition.Charts.Drawing;

/// <summary>
/// The clipping paths of a drawing. The drawing library numbers them through the whole life of a process and writes the same one again for every part, so that
/// no two drawings would be the same bytes: here each is written once and numbered anew.
/// </summary>
internal static class Clips
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(10);

    private static readonly Regex Definition = new(
        @"\s*<clipPath id=""(?<id>[^""]+)"">\s*(?<shape>.*?)\s*</clipPath>",
        RegexOptions.Singleline | RegexOptions.ExplicitCapture,
        Longest
    );

    private static readonly Regex Use = new(@"url\(#(?<id>[^)]+)\)", RegexOptions.ExplicitCapture, Longest);

    private static readonly Regex Begin = new(
        @"(?<seam>\s*</g>\s*)?<g clip-path=""(?<clip>[^""]+)"">",
        RegexOptions.ExplicitCapture,
        Longest
    );

    /// <summary>The drawing with its clipping paths named by a prefix and 0, 1, 2 … in the order of their first use; the prefix may follow from the drawing.</summary>
    public static string Once(string drawing, Func<string, string> prefix)
    {
        var shapes = new List<string>();
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        var without = Definition.Replace(
            drawing,
            match =>
            {
                var shape = match.Groups["shape"].Value;
                var number = shapes.IndexOf(shape);
                numbers[match.Groups["id"].Value] = number < 0 ? shapes.Count : number;
                if (number < 0)
                {
                    shapes.Add(shape);
                }

                return "";
            }
        );
        var numbered = Joined(
            Use.Replace(
                without,
                match => $"url(#{numbers[match.Groups["id"].Value].ToString(CultureInfo.InvariantCulture)})"
            )
        );
        var name = prefix(string.Concat(shapes) + numbered);
        var definitions = shapes.Select(
            (shape, number) => FormattableString.Invariant($"<clipPath id=\"{name}-{number}\">{shape}</clipPath>\n")
        );
        return string.Concat(definitions) + numbered.Replace("url(#", $"url(#{name}-");
    }

    /// <summary>Neighbours with the same clipping path become one part.</summary>
    private static string Joined(string drawing)
    {
        var open = "";
        return Begin.Replace(
            drawing,
            match =>
            {
                var clip = match.Groups["clip"].Value;
                var isSame = match.Groups["seam"].Success && clip == open;
                open = clip;
                return isSame ? "\n" : match.Value;
            }
        );
    }
}
