using System.Globalization;
using System.Text;

namespace OilCondition.Charts.Drawing;

/// <summary>Texts of others, fit to be drawn.</summary>
internal static class CleanText
{
    /// <summary>
    /// Control characters and those that turn the direction of writing are taken out, since they could make figures read backwards and are not allowed in XML;
    /// white space becomes one space, half of a character a replacement mark.
    /// </summary>
    public static string Of(string text)
    {
        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var letter = text[i];
            if (char.IsHighSurrogate(letter) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                clean.Append(letter).Append(text[++i]);
            }
            else if (char.IsSurrogate(letter) || letter is '\uFFFE' or '\uFFFF')
            {
                clean.Append('\uFFFD');
            }
            else if (char.IsWhiteSpace(letter))
            {
                clean.Append(letter == '\u00A0' ? letter : ' ');
            }
            else if (
                CharUnicodeInfo.GetUnicodeCategory(letter) is not (UnicodeCategory.Control or UnicodeCategory.Format)
            )
            {
                clean.Append(letter);
            }
        }

        return clean.ToString().Trim();
    }

    public static string Xml(string text) =>
        text.Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;").Replace("\"", "&quot;");
}
