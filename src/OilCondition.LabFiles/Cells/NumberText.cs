using System.Globalization;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads numbers with the file's decimal separator, and with thousands grouped where that can only be meant.</summary>
internal sealed class NumberText(char decimalSeparator, bool mayGroup)
{
#if NET
    private static readonly NumberFormatInfo DecimalComma = new() { NumberDecimalSeparator = "," };
#endif

    private readonly char other = decimalSeparator == ',' ? '.' : ',';

    /// <summary>Point or comma.</summary>
    public char DecimalSeparator => decimalSeparator;

    /// <summary>Reads a number.</summary>
    /// <param name="text">The number, without blanks around it.</param>
    /// <param name="value">The number read.</param>
    /// <returns>False for anything else, for what is not finite, and for '1,234' where it may be 1.234.</returns>
    public bool TryRead(ReadOnlySpan<char> text, out double value)
    {
        if (text.IndexOfAny(' ', '\'', other) < 0 && text.IndexOfAny('\u00A0', '\u202F', '\u2009') < 0)
        {
            return TryPlain(text, out value);
        }

        value = 0;
        return IsGrouped(text, out var groups, out var mark)
            && (mark != other || mayGroup || groups > 1 || text.IndexOf(decimalSeparator) >= 0)
            && TryPlain(Without(text, mark), out value);
    }

    /// <summary>Whether a text is a number only if the decimal separator is the other one, as 12,5 is where points are expected.</summary>
    public bool NeedsOther(ReadOnlySpan<char> text) =>
        text.IndexOf(other) >= 0
        && !IsGrouped(text, out _, out _)
        && new NumberText(other, mayGroup: false).TryRead(text, out _);

    private bool TryPlain(ReadOnlySpan<char> text, out double value)
    {
        const NumberStyles Styles =
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
#if NET
        var isNumber =
            decimalSeparator == '.'
                ? double.TryParse(text, Styles, CultureInfo.InvariantCulture, out value)
                : double.TryParse(text, Styles, DecimalComma, out value);
#else
        var isNumber = double.TryParse(
            text.ToString().Replace(decimalSeparator, '.'),
            Styles,
            CultureInfo.InvariantCulture,
            out value
        );
#endif
        return isNumber && Guard.IsFinite(value);
    }

    /// <summary>Whether the whole part is groups of three digits behind a first one of one to three, all with one mark.</summary>
    private bool IsGrouped(ReadOnlySpan<char> text, out int groups, out char mark)
    {
        groups = 0;
        mark = '\0';
        var start = text.Length > 0 && text[0] is '-' or '+' ? 1 : 0;
        var end = text.IndexOf(decimalSeparator);
        var whole = text.Slice(start, (end < 0 ? text.Length : end) - start);
        var digits = 0;
        foreach (var letter in whole)
        {
            if (letter is >= '0' and <= '9')
            {
                digits++;
                continue;
            }

            var isMark = letter == other || letter is ' ' or '\'' or '\u00A0' or '\u202F' or '\u2009';
            if (!isMark || (mark != '\0' && letter != mark) || (groups == 0 ? digits is < 1 or > 3 : digits != 3))
            {
                return false;
            }

            mark = letter;
            groups++;
            digits = 0;
        }

        return groups > 0 && digits == 3 && whole[0] != '0';
    }

    private static ReadOnlySpan<char> Without(ReadOnlySpan<char> text, char mark) =>
        text.ToString().Replace(mark.ToString(), "").AsSpan();
}
