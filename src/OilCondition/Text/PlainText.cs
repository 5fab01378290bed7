using System.Collections.Concurrent;
using System.Globalization;

namespace OilCondition.Text;

/// <summary>Numbers, moments and names as people and files read them, in the invariant culture.</summary>
internal static class PlainText
{
    /// <summary>Three significant figures below a thousand, whole above; powers of ten only where digits would be a row of zeros.</summary>
    public static string Number(double value) => Digits(value, 3);

    /// <summary>
    /// As many digits as an uncertainty bears: its first figure is the last one printed, so that 69.4 known to 7 reads 69. A figure without
    /// an uncertainty has three.
    /// </summary>
    public static string Number(double value, double? uncertainty)
    {
        if (uncertainty is not > 0 || value == 0)
        {
            return Number(value);
        }

        var figures = Magnitude(value) - Magnitude(uncertainty.Value) + 1;
        return Digits(value, Math.Max(1, Math.Min(3, figures)));
    }

    /// <summary>A figure as a laboratory reports it: four significant figures below a thousand, whole above.</summary>
    public static string Reported(double value) => Digits(value, 4);

    private static string Digits(double value, int figures)
    {
        if (value == 0 || !Guard.IsFinite(value))
        {
            return value.ToString("0", CultureInfo.InvariantCulture);
        }

        var magnitude = Magnitude(value);
        if (magnitude is < -4 or > 12)
        {
            return value.ToString(
                figures == 1 ? "0E0" : "0." + new string('#', figures - 1) + "E0",
                CultureInfo.InvariantCulture
            );
        }

        var decimals = figures - 1 - magnitude;
        return decimals > 0
            ? Math.Round(value, decimals).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture)
            : (figures >= 3 ? Math.Round(value) : Math.Round(value / Power(-decimals)) * Power(-decimals)).ToString(
                "0",
                CultureInfo.InvariantCulture
            );
    }

    private static int Magnitude(double value)
    {
        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        // What rounds up to the next power of ten has its digits: 999.7 reads 1000.
        return magnitude + (Math.Abs(value) / Math.Pow(10, magnitude) >= 9.995 ? 1 : 0);
    }

    private static double Power(int exponent) => Math.Pow(10, exponent);

    public static string Tenths(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    public static string Date(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>A text in lines of at most 100 columns, those after the first one further in; a longer word keeps its own line.</summary>
    public static IEnumerable<string> Wrap(string text, string indent)
    {
        const int Columns = 100;
        var line = indent;
        var isEmpty = true;
        foreach (var word in text.Split(' '))
        {
            if (!isEmpty && line.Length + 1 + word.Length > Columns)
            {
                yield return line;
                line = indent + "    ";
                isEmpty = true;
            }

            line += isEmpty ? word : " " + word;
            isEmpty = false;
        }

        yield return line;
    }

    /// <summary>How many characters of a text a message cites.</summary>
    public const int LongestCited = 200;

    /// <summary>A text that may be of any length, for a message: a longer one is cut, and its length said.</summary>
    /// <param name="text">The text, or its beginning.</param>
    /// <param name="length">Its length, where only its beginning is at hand.</param>
    public static string Cut(ReadOnlySpan<char> text, long? length = null)
    {
        var whole = length ?? text.Length;
        if (whole <= LongestCited)
        {
            return text.ToString();
        }

        var end = char.IsHighSurrogate(text[LongestCited - 1]) ? LongestCited - 1 : LongestCited;
        return $"{text.Slice(0, end).ToString()}… ({whole.ToString("N0", CultureInfo.InvariantCulture)} characters)";
    }

    /// <summary>Name of an enumeration member as it stands in keys and JSON: <c>floor-above-target</c>.</summary>
    public static string Kebab<T>(T value)
        where T : struct, Enum => WordsOf<T>.Get(value, WordsOf<T>.Hyphens, "-");

    /// <summary>Name of an enumeration member as people read it: <c>floor above target</c>.</summary>
    public static string Spaced<T>(T value)
        where T : struct, Enum => WordsOf<T>.Get(value, WordsOf<T>.Spaces, " ");

    /// <summary>Words that were asked for: an assessment asks for the same few a hundred times.</summary>
    private static class WordsOf<T>
        where T : struct, Enum
    {
        public static readonly ConcurrentDictionary<T, string> Hyphens = new();
        public static readonly ConcurrentDictionary<T, string> Spaces = new();

        public static string Get(T value, ConcurrentDictionary<T, string> words, string between) =>
            words.TryGetValue(value, out var word) ? word : words.GetOrAdd(value, Lower(value.ToString(), between));

        private static string Lower(string name, string between) =>
            string.Concat(
                name.Select(
                    (letter, i) => (i > 0 && char.IsUpper(letter) ? between : "") + char.ToLowerInvariant(letter)
                )
            );
    }
}
