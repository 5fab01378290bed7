using System.Globalization;
using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>
/// The words of charts, each under its key, and the sentences from which names, units, numbers and dates come. A figure or name stands in braces, as in
/// <c>alarm above {limit}</c>.
/// </summary>
/// <example>
/// <code>
/// var texts = ChartTexts.German.In(Sentences.Units.UsCustomary);
/// var chart = TrendChart.Of(assessment, Measurands.AcidNumber, new ChartOptions(texts));
/// </code>
/// </example>
public sealed class ChartTexts
{
    private const string What = "the words of charts";

    private static readonly Lazy<ChartTexts> Shipped = new(() =>
        new ChartTexts(PhraseBook.Shipped(typeof(ChartTexts).Assembly, "texts.en.json"), Sentences.English)
    );

    private static readonly Lazy<ChartTexts> ShippedGerman = new(() =>
        Parse(PhraseBook.Resource(typeof(ChartTexts).Assembly, "texts.de.json"), Sentences.German)
    );

    private readonly PhraseBook book;

    private ChartTexts(PhraseBook book, Sentences sentences)
    {
        this.book = book;
        Sentences = sentences;
    }

    /// <summary>English, in SI units.</summary>
    public static ChartTexts English => Shipped.Value;

    /// <summary>German, in SI units. Names of machines and of ways to treat stay as the records have them.</summary>
    public static ChartTexts German => ShippedGerman.Value;

    /// <summary>The sentences from which names, units, numbers and dates come.</summary>
    public Sentences Sentences { get; }

    /// <summary>The language tag after BCP 47, such as <c>en</c>.</summary>
    public string Language => book.Language;

    /// <summary>All keys, for those who translate them and for tests.</summary>
    internal IEnumerable<string> Keys => book.Keys;

    internal string this[string key] => book[key];

    /// <summary>Reads words from JSON: <c>{ "language": "en", "texts": { "mark.reading": "reading" } }</c>. Keys left out keep their English words.</summary>
    /// <param name="json">The text.</param>
    /// <param name="sentences">The sentences from which names, units, numbers and dates come; English where left out.</param>
    /// <returns>The words.</returns>
    /// <exception cref="FormatException">It is no such JSON, names a key that does not exist, or changes what stands in braces; every fault is listed.</exception>
    public static ChartTexts Parse(string json, Sentences? sentences = null) =>
        new(PhraseBook.Parse(Guard.NotNull(json), What, English.book, _ => false), sentences ?? Sentences.English);

    /// <summary>The same words in other units.</summary>
    /// <param name="unitSystem">The units.</param>
    /// <returns>Words in them.</returns>
    public ChartTexts In(Sentences.Units unitSystem) => new(book, Sentences.In(unitSystem));

    /// <summary>Language and units.</summary>
    /// <returns>For example <c>en, SI</c>.</returns>
    public override string ToString() =>
        $"{Language}, {(Sentences.UnitSystem == Sentences.Units.Si ? "SI" : "US customary")}";

    /// <summary>A text with its places filled; braces in what fills them stand for themselves.</summary>
    internal string Say(string key, params ReadOnlySpan<(string Place, string Text)> values) => book.Say(key, values);

    /// <summary>A figure as a laboratory reports it.</summary>
    internal string Reported(double value) => Local(PlainText.Reported(value));

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

    private string Local(string invariant) => invariant.Replace(".", Sentences.DecimalSeparator);
}
