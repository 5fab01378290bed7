using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>All words of the charts, and how they write numbers and dates. Immutable; any phrase and any name can be replaced.</summary>
/// <remarks>
/// A phrase is asked for by its English words, with {0}, {1} … where figures go. Names of measurands, treatments and the like are replaced apart from phrases,
/// since every plant has its own.
/// </remarks>
/// <example>
/// <code>
/// var texts = ChartTexts.German.With("alarm", "Eingriffswert").WithName("acid number", "Säurezahl nach Titration");
/// var chart = TrendChart.Of(assessment, Measurands.AcidNumber, new ChartOptions(texts));
/// </code>
/// </example>
public sealed class ChartTexts
{
    private static readonly Regex Hole = new(@"\{\d+\}", RegexOptions.None, TimeSpan.FromSeconds(1));

    private readonly IReadOnlyDictionary<string, string> phrases;
    private readonly IReadOnlyDictionary<string, string> names;
    private readonly NumberFormatInfo numbers;
    private readonly string datePattern;
    private readonly string monthPattern;
    private readonly string timePattern;

    private ChartTexts(
        string language,
        IReadOnlyDictionary<string, string> phrases,
        IReadOnlyDictionary<string, string> names,
        NumberFormatInfo numbers,
        string datePattern,
        string monthPattern,
        string timePattern
    )
    {
        Language = language;
        this.phrases = phrases;
        this.names = names;
        this.numbers = numbers;
        this.datePattern = datePattern;
        this.monthPattern = monthPattern;
        this.timePattern = timePattern;
    }

    /// <summary>English, with dates as 2026-03-31.</summary>
    public static ChartTexts English { get; } =
        new(
            "en",
            new Dictionary<string, string>(StringComparer.Ordinal),
            new Dictionary<string, string>(StringComparer.Ordinal),
            NumberFormatInfo.InvariantInfo,
            "yyyy-MM-dd",
            "yyyy-MM",
            "HH:mm"
        );

    /// <summary>German, with a decimal comma and dates as 31.03.2026.</summary>
    public static ChartTexts German { get; } =
        new(
            "de",
            GermanWords.Phrases,
            GermanWords.Names,
            NumberFormatInfo.ReadOnly(
                new NumberFormatInfo { NumberDecimalSeparator = ",", NumberGroupSeparator = "." }
            ),
            "dd.MM.yyyy",
            "MM.yyyy",
            "HH:mm"
        );

    /// <summary>All phrases, in English, in alphabetical order.</summary>
    public static IReadOnlyList<string> Phrases { get; } =
    [.. GermanWords.Phrases.Keys.OrderBy(phrase => phrase, StringComparer.Ordinal)];

    /// <summary>Two letters of the language, as ISO 639-1 has them.</summary>
    public string Language { get; }

    /// <summary>The same texts with one phrase replaced.</summary>
    /// <param name="phrase">The phrase in English: one of <see cref="Phrases"/>.</param>
    /// <param name="text">What is written instead, with the same {0}, {1} … in any order.</param>
    /// <returns>The texts.</returns>
    /// <exception cref="ArgumentException">There is no such phrase, the text is blank, or its places for figures are others.</exception>
    public ChartTexts With(string phrase, string text)
    {
        Guard.NotNull(phrase);
        Guard.NotBlank(text);
        if (!GermanWords.Phrases.ContainsKey(phrase))
        {
            throw new ArgumentException(
                $"phrase is '{PlainText.Cut(phrase.AsSpan())}'; allowed: one of ChartTexts.Phrases. Names are replaced by WithName.",
                nameof(phrase)
            );
        }

        var (asked, given) = (Holes(phrase), Holes(text));
        if (!asked.SetEquals(given))
        {
            throw new ArgumentException(
                $"text has {Words(given)}, the phrase '{phrase}' has {Words(asked)}; both must have the same.",
                nameof(text)
            );
        }

        return new(Language, Replaced(phrases, phrase, text), names, numbers, datePattern, monthPattern, timePattern);

        static string Words(SortedSet<string> holes) =>
            holes.Count == 0 ? "no place for a figure" : string.Join(" ", holes);
    }

    /// <summary>The same texts with another name for a measurand, a kind of treatment or whatever else the library names in English.</summary>
    /// <param name="name">The name in English, such as that of a measurand.</param>
    /// <param name="text">What is written instead.</param>
    /// <returns>The texts.</returns>
    /// <exception cref="ArgumentException">A text is blank.</exception>
    public ChartTexts WithName(string name, string text) =>
        new(
            Language,
            phrases,
            Replaced(names, Guard.NotBlank(name), Guard.NotBlank(text)),
            numbers,
            datePattern,
            monthPattern,
            timePattern
        );

    /// <summary>The same words with other forms of numbers and dates.</summary>
    /// <param name="numbers">Decimal separator and negative sign are taken from it.</param>
    /// <param name="datePattern">How a day is written, such as <c>MM/dd/yyyy</c>.</param>
    /// <param name="monthPattern">How a month is written, such as <c>MM/yyyy</c>.</param>
    /// <param name="timePattern">How the time of day is written, such as <c>hh:mm tt</c>.</param>
    /// <returns>The texts.</returns>
    /// <exception cref="ArgumentException">A pattern is blank or no pattern of dates.</exception>
    public ChartTexts WithFormats(
        NumberFormatInfo numbers,
        string datePattern,
        string monthPattern,
        string timePattern
    ) =>
        new(
            Language,
            phrases,
            names,
            NumberFormatInfo.ReadOnly((NumberFormatInfo)Guard.NotNull(numbers).Clone()),
            Pattern(datePattern, nameof(datePattern)),
            Pattern(monthPattern, nameof(monthPattern)),
            Pattern(timePattern, nameof(timePattern))
        );

    /// <summary>Language and forms.</summary>
    /// <returns>For example <c>de, 31.12.2026, 0,5</c>.</returns>
    public override string ToString() => $"{Language}, {Date(new DateTime(2026, 12, 31))}, {Number(0.5)}";

    /// <summary>A phrase with its figures.</summary>
    internal string Say(string phrase, params object[] figures)
    {
        if (!GermanWords.Phrases.ContainsKey(phrase))
        {
            throw new InvalidOperationException($"'{phrase}' is no phrase of the charts.");
        }

        var text = phrases.TryGetValue(phrase, out var said) ? said : phrase;
        return figures.Length == 0 ? text : string.Format(CultureInfo.InvariantCulture, text, figures);
    }

    /// <summary>What something is called that the library names in English.</summary>
    internal string Name(string english) => names.TryGetValue(english, out var name) ? name : english;

    /// <summary>A figure as a laboratory reports it.</summary>
    internal string Number(double value) => Local(PlainText.Reported(value));

    /// <summary>A figure with as many digits as its uncertainty bears.</summary>
    internal string Number(double value, double uncertainty) => Local(PlainText.Number(value, uncertainty));

    /// <summary>A figure on a scale of even steps.</summary>
    internal string Stepped(double value, double step)
    {
        var decimals = (int)Math.Ceiling(-Math.Log10(step) - 1e-9);
        var size = Math.Abs(value);
        if (size >= 1e9 || (size > 0 && decimals > 6))
        {
            var figures = Math.Max(0, Math.Min(12, (int)Math.Floor(Math.Log10(size)) + decimals));
            return Local(value.ToString("0." + new string('#', figures) + "E0", CultureInfo.InvariantCulture));
        }

        // Steps added up leave the last digits of a zero.
        return Local((size < step / 2 ? 0 : value).ToString("F" + Math.Max(0, decimals), CultureInfo.InvariantCulture));
    }

    /// <summary>A whole number.</summary>
    internal string Count(int count) => Local(count.ToString(CultureInfo.InvariantCulture));

    internal string Date(DateTime at) => at.ToString(datePattern, CultureInfo.InvariantCulture);

    internal string Month(DateTime at) => at.ToString(monthPattern, CultureInfo.InvariantCulture);

    internal static string Year(DateTime at) => at.ToString("yyyy", CultureInfo.InvariantCulture);

    internal string Time(DateTime at) => at.ToString(timePattern, CultureInfo.InvariantCulture);

    internal static string Offset(TimeSpan offset) =>
        (offset < TimeSpan.Zero ? "-" : "+") + offset.ToString(@"hh\:mm", CultureInfo.InvariantCulture);

    private static SortedSet<string> Holes(string text) =>
        new(Hole.Matches(text).Cast<Match>().Select(match => match.Value), StringComparer.Ordinal);

    private static string Pattern(string pattern, string name)
    {
        Guard.NotBlank(pattern, name);
        try
        {
            _ = new DateTime(2026, 3, 31).ToString(pattern, CultureInfo.InvariantCulture);
            return pattern;
        }
        catch (FormatException fault)
        {
            throw new ArgumentException(
                $"{name} is '{pattern}'; allowed: a pattern of dates such as yyyy-MM-dd.",
                name,
                fault
            );
        }
    }

    private static Dictionary<string, string> Replaced(
        IReadOnlyDictionary<string, string> words,
        string key,
        string text
    )
    {
        var replaced = words.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        replaced[key] = text;
        return replaced;
    }

    private string Local(string invariant) =>
        invariant.Replace("-", numbers.NegativeSign).Replace(".", numbers.NumberDecimalSeparator);
}
