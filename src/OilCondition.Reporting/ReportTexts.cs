using OilCondition.Text;

namespace OilCondition.Reporting;

/// <summary>
/// The words of a report: its headings and short phrases, each under its key, and the sentences in which it tells its facts. A figure or name stands in
/// braces, as in <c>{count} machines</c>.
/// </summary>
public sealed class ReportTexts
{
    private const string What = "the words of a report";

    private static readonly Lazy<ReportTexts> Shipped = new(() =>
        new ReportTexts(PhraseBook.Shipped(typeof(ReportTexts).Assembly, "texts.en.json"), Sentences.English)
    );

    private static readonly Lazy<ReportTexts> ShippedGerman = new(() =>
        Parse(PhraseBook.Resource(typeof(ReportTexts).Assembly, "texts.de.json"), Sentences.German)
    );

    private readonly PhraseBook book;

    private ReportTexts(PhraseBook book, Sentences sentences)
    {
        this.book = book;
        Sentences = sentences;
    }

    /// <summary>English, in SI units.</summary>
    public static ReportTexts English => Shipped.Value;

    /// <summary>German, in SI units. What comes from the laboratory and from the station file stays as it stands there.</summary>
    public static ReportTexts German => ShippedGerman.Value;

    /// <summary>The sentences in which facts are told, those of decisions by <see cref="DecisionSentences"/>.</summary>
    public Sentences Sentences { get; }

    /// <summary>The language tag after BCP 47, as in <c>&lt;html lang="en"&gt;</c>.</summary>
    public string Language => book.Language;

    /// <summary>All keys, which a page has as its labels.</summary>
    internal IEnumerable<string> Keys => book.Keys;

    internal string this[string key] => book[key];

    /// <summary>Reads words from JSON: <c>{ "language": "en", "texts": { "first.state": "State" } }</c>. Keys left out keep their English words.</summary>
    /// <param name="json">The text.</param>
    /// <param name="sentences">The sentences in which facts are told; English where left out.</param>
    /// <returns>The words.</returns>
    /// <exception cref="FormatException">It is no such JSON, names a key that does not exist, or changes what stands in braces; every fault is listed.</exception>
    public static ReportTexts Parse(string json, Sentences? sentences = null) =>
        new(PhraseBook.Parse(Guard.NotNull(json), What, English.book, _ => false), sentences ?? Sentences.English);

    /// <summary>The same words in other units.</summary>
    /// <param name="unitSystem">The units.</param>
    /// <returns>Words in them.</returns>
    public ReportTexts In(Sentences.Units unitSystem) => new(book, Sentences.In(unitSystem));

    /// <summary>Language and units.</summary>
    /// <returns>For example <c>en, SI</c>.</returns>
    public override string ToString() =>
        $"{Language}, {(Sentences.UnitSystem == Sentences.Units.Si ? "SI" : "US customary")}";

    /// <summary>A text with its places filled; braces in what fills them stand for themselves.</summary>
    internal string Say(string key, params ReadOnlySpan<(string Place, string Text)> values) => book.Say(key, values);
}
