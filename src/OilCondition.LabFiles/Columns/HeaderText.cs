using System.Globalization;

namespace OilCondition.LabFiles;

/// <summary>What headers are compared by, and the parts that stand behind a name in one: unit, method, temperature.</summary>
internal static class HeaderText
{
    /// <summary>A longer text is no header of a known column.</summary>
    private const int Longest = 200;

    private static readonly string[] Standards = ["astm", "iso", "din", "en", "iec", "ip", "jis", "gost", "nf"];

    /// <summary>
    /// Letters, digits and signs that tell columns apart: without case, blanks, brackets, hyphens and points; 'µm(c)' is 'um', '≥' is '>'.
    /// </summary>
    public static string Bare(string header)
    {
        if (header.Length > Longest)
        {
            return "";
        }

        Span<char> bare = stackalloc char[Longest];
        var length = 0;
        for (var i = 0; i < header.Length; i++)
        {
            var letter = char.ToLowerInvariant(header[i]);
            var isDropped = letter switch
            {
                '-' => !IsMinus(header, i),
                '_' or '–' or '(' or ')' or '[' or ']' or '°' or '@' or ':' or ',' or ';' or '"' or '\'' => true,
                '.' => i == 0 || i == header.Length - 1 || !char.IsDigit(header[i - 1]) || !char.IsDigit(header[i + 1]),
                '=' => length > 0 && bare[length - 1] == '>',
                _ => char.IsWhiteSpace(letter),
            };
            if (!isDropped)
            {
                bare[length++] = letter switch
                {
                    'µ' or 'μ' => 'u',
                    '≥' or '⩾' => '>',
                    _ => letter,
                };
            }
        }

        var text = bare.Slice(0, length).ToString();
        return text.EndsWith("umc", StringComparison.Ordinal) ? text.Substring(0, length - 1) : text;
    }

    /// <summary>Whether a hyphen is the sign of a temperature: 'KV -40C' is no viscosity at 40 °C.</summary>
    private static bool IsMinus(string header, int place) =>
        place > 0
        && place < header.Length - 1
        && char.IsDigit(header[place + 1])
        && !char.IsLetterOrDigit(header[place - 1]);

    /// <summary>Name and rest at each place where a name may end, the longest name first.</summary>
    public static IEnumerable<(string Name, string Tail)> Splits(string header)
    {
        for (var i = Math.Min(header.Length, Longest) - 1; i > 0; i--)
        {
            if (header[i] is ' ' or '_' or ',' or '(' or '[' or '/' or ':' or ';' && header[i - 1] != ' ')
            {
                yield return (header.Substring(0, i), Tail(header.Substring(i)));
            }
        }
    }

    private static string Tail(string text)
    {
        var tail = text.TrimStart(' ', '_', ',', ':', ';');
        return tail.StartsWith("- ", StringComparison.Ordinal) ? tail.Substring(2).TrimStart() : tail;
    }

    /// <summary>The parts of what stands behind a name: each pair of brackets, and what is between them.</summary>
    public static IReadOnlyList<string> Parts(string rest)
    {
        var parts = new List<string>();
        for (var i = 0; i < rest.Length; )
        {
            var isBracket = rest[i] is '(' or '[';
            var end = isBracket ? rest.IndexOf(rest[i] == '(' ? ')' : ']', i) : rest.IndexOfAny(['(', '[', ','], i);
            end = end < 0 ? rest.Length : end;
            var start = isBracket ? i + 1 : i;
            var inside = rest.Substring(start, end - start);
            parts.AddRange(
                inside.Split('@').Select(part => Tail(part).Trim(' ', ',', ':', ';')).Where(part => part.Length > 0)
            );
            i = end < rest.Length && rest[end] is ')' or ']' or ',' ? end + 1 : Math.Max(end, i + 1);
        }

        return parts;
    }

    /// <summary>'ASTM D6304', 'D445' or 'ISO 11500': a test method.</summary>
    public static bool IsMethod(string part)
    {
        var word = new string([.. part.TakeWhile(char.IsLetter)]).ToLowerInvariant();
        return part.Any(char.IsDigit)
            && (Standards.Contains(word, StringComparer.Ordinal) || (word.Length == 1 && word is "d" or "e"));
    }

    /// <summary>Divides 'kv98.9c' into the name and the temperature in °C.</summary>
    public static bool TrySplitTemperature(string bare, out string name, out double celsius)
    {
        celsius = 0;
        var end = bare.Length;
        var scale = end > 0 && bare[end - 1] is 'c' or 'f' ? bare[--end] : 'c';
        end -= bare.Substring(0, end).EndsWith("deg", StringComparison.Ordinal) ? 3 : 0;
        var start = end;
        while (start > 0 && (char.IsDigit(bare[start - 1]) || bare[start - 1] == '.'))
        {
            start--;
        }

        start -= start > 0 && bare[start - 1] == '-' ? 1 : 0;
        name = bare.Substring(0, start);
        name = name.EndsWith("at", StringComparison.Ordinal) ? name.Substring(0, name.Length - 2) : name;
        var digits = bare.Substring(start, end - start);
        if (
            digits.Length == 0
            || !double.TryParse(
                digits,
                NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var degrees
            )
        )
        {
            return false;
        }

        celsius = scale == 'f' ? (degrees - 32) / 1.8 : degrees;
        return true;
    }
}
