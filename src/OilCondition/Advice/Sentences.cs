using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>The one place where problems, findings, recommendations and cautions become sentences: in English or German, in SI or US customary units.</summary>
/// <remarks>
/// Facts stay codes and numbers, and JSON has English sentences beside them. Other words, or those of another language, are given by <see cref="Parse"/>.
/// </remarks>
/// <example>
/// <code>
/// Sentences.English.Of(problem);
/// Sentences.German.In(Sentences.Units.UsCustomary).Of(problem);
/// </code>
/// </example>
public sealed partial class Sentences
{
    private const string What = "a set of sentences";

    private static readonly Lazy<Sentences> Shipped = new(() => new Sentences(Book("en"), Units.Si));
    private static readonly Lazy<Sentences> ShippedGerman = new(() =>
        new Sentences(PhraseBook.Parse(Json("de"), What, Shipped.Value.book, MayBeAdded), Units.Si)
    );

    private readonly PhraseBook book;
    private readonly Units units;
    private readonly string separator;

    private Sentences(PhraseBook book, Units units)
    {
        this.book = book;
        this.units = units;
        separator = book["format.decimal"];
    }

    /// <summary>Units in which sentences give temperatures, volumes, contents and viscosities.</summary>
    public enum Units
    {
        /// <summary>°C, L, mg/kg, mm²/s.</summary>
        Si,

        /// <summary>°F, US gallons, ppm by mass, cSt. 1 gal is 3.785411784 L (NIST SP 811, B.8).</summary>
        UsCustomary,
    }

    /// <summary>English, in SI units.</summary>
    public static Sentences English => Shipped.Value;

    /// <summary>German, in SI units.</summary>
    public static Sentences German => ShippedGerman.Value;

    /// <summary>Language tag after BCP 47, such as <c>en</c>.</summary>
    public string Language => book.Language;

    /// <summary>Which units they give.</summary>
    public Units UnitSystem => units;

    /// <summary>
    /// Reads sentences from JSON: <c>{ "language": "en-GB", "texts": { "word.alarm": "alarm" } }</c>. Keys left out stay English. Names of measurands, of
    /// units, of evidence and its words need not be there: <c>measurand.water-content</c>, <c>unit.per mL</c>, <c>evidence.read-at</c>, <c>fact.no-top-up</c>.
    /// </summary>
    /// <param name="json">The text.</param>
    /// <returns>Sentences in SI units.</returns>
    /// <exception cref="FormatException">
    /// It is no such JSON, names a key that does not exist, changes what stands in braces, or has no pattern where one of dates is expected; faults are listed.
    /// </exception>
    public static Sentences Parse(string json)
    {
        var given = PhraseBook.Parse(Guard.NotNull(json), What, English.book, MayBeAdded);
        string[] patterns = ["format.date", "format.time", "format.time-of-day", "format.month"];
        var faults = patterns.Where(key => !IsPattern(given[key])).Select(key => $"'{key}' is '{given[key]}'").ToList();
        return faults.Count == 0
            ? new(given, Units.Si)
            : throw new FormatException(
                $"In {What}: {string.Join("; ", faults)}; expected is a pattern of dates such as yyyy-MM-dd."
            );
    }

    /// <summary>The same sentences in other units.</summary>
    /// <param name="unitSystem">The units.</param>
    /// <returns>Sentences in them.</returns>
    public Sentences In(Units unitSystem) => new(book, unitSystem);

    /// <summary>Language and units.</summary>
    /// <returns>For example <c>en, SI</c>.</returns>
    public override string ToString() => $"{Language}, {(units == Units.Si ? "SI" : "US customary")}";

    /// <summary>The keys of all phrases, for those who translate them and for tests.</summary>
    internal IEnumerable<string> Keys => book.Keys;

    private static PhraseBook Book(string language) =>
        PhraseBook.Shipped(typeof(Sentences).Assembly, $"sentences.{language}.json");

    private static string Json(string language) =>
        PhraseBook.Resource(typeof(Sentences).Assembly, $"sentences.{language}.json");

    /// <summary>Names that English takes from the things themselves.</summary>
    private static bool MayBeAdded(string key) =>
        key.StartsWith("measurand.", StringComparison.Ordinal)
        || key.StartsWith("unit.", StringComparison.Ordinal)
        || key.StartsWith("evidence.", StringComparison.Ordinal)
        || key.StartsWith("fact.", StringComparison.Ordinal);

    internal string And => book["word.and"];

    private static bool IsPattern(string pattern)
    {
        try
        {
            return new DateTime(2026, 3, 31).ToString(pattern, CultureInfo.InvariantCulture).Length > 0;
        }
        catch (FormatException)
        {
            return false;
        }
    }

    internal string Say(string key, params ReadOnlySpan<(string Place, string Text)> values) => book.Say(key, values);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text.Substring(1);

    /// <summary>A sentence that goes on from another one; where nouns have capitals it stays as it is.</summary>
    private string Small(string text) =>
        book["format.lower-case"] == "yes" && text.Length > 1 && char.IsLower(text[1])
            ? char.ToLowerInvariant(text[0]) + text.Substring(1)
            : text;
}
