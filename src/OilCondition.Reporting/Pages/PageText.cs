using System.Text;

namespace OilCondition.Reporting;

/// <summary>How a text of a machine, an oil or a laboratory is written so that it can change nothing around it.</summary>
internal static class PageText
{
    private static readonly HashSet<char> MarkdownMarks = [.. "\\`*_[]<>|#~&"];

    /// <summary>The five characters that mean something. Encoders at hand differ between frameworks in the others, and with them the bytes.</summary>
    public static string Html(string text) =>
        new StringBuilder(Plain(text))
            .Replace("&", "&amp;")
            .Replace("<", "&lt;")
            .Replace(">", "&gt;")
            .Replace("\"", "&quot;")
            .Replace("'", "&#39;")
            .ToString();

    public static string Markdown(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var letter in Plain(text))
        {
            if (MarkdownMarks.Contains(letter))
            {
                escaped.Append('\\');
            }

            escaped.Append(letter == '\n' ? ' ' : letter);
        }

        return escaped.ToString();
    }

    /// <summary>Without the marks that turn the direction of what follows, and without control characters but line feeds.</summary>
    private static string Plain(string text) =>
        text.Any(IsLeftOut) ? string.Concat(text.Where(letter => !IsLeftOut(letter))) : text;

    private static bool IsLeftOut(char letter) =>
        (char.IsControl(letter) && letter != '\n')
        || letter is '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
