using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using OilCondition.Text;

namespace OilCondition.Reporting;

/// <summary>
/// The words of a report: headings, states and short phrases, each under its key. A figure or name stands in braces, as in
/// <c>{count} machines</c>.
/// </summary>
public sealed class ReportTexts
{
    private static readonly Regex Place = new("{([A-Za-z]+)}", RegexOptions.None, TimeSpan.FromSeconds(1));
    private static readonly Lazy<ReportTexts> Shipped = new(() => Read("en"));

    private readonly Dictionary<string, string> texts;

    private ReportTexts(string language, Dictionary<string, string> texts)
    {
        Language = language;
        this.texts = texts;
    }

    /// <summary>English.</summary>
    public static ReportTexts English => Shipped.Value;

    /// <summary>The language tag after BCP 47, as in <c>&lt;html lang="en"&gt;</c>.</summary>
    public string Language { get; }

    internal IReadOnlyDictionary<string, string> All => texts;

    internal string this[string key] => texts[key];

    /// <summary>Reads words from JSON: <c>{ "language": "en", "texts": { "severity.alarm": "alarm" } }</c>. Keys left out keep their English words.</summary>
    /// <param name="json">The text.</param>
    /// <returns>The words.</returns>
    /// <exception cref="FormatException">It is no such JSON, names a key that does not exist, or changes what stands in braces; every fault is listed.</exception>
    public static ReportTexts Parse(string json)
    {
        var (language, given) = Document(Guard.NotNull(json));
        var known = English;
        var faults = given
            .Where(text => !known.texts.ContainsKey(text.Key))
            .Select(text => $"'{text.Key}' is no key of a report's words")
            .Concat(
                given
                    .Where(text =>
                        known.texts.TryGetValue(text.Key, out var word) && !Places(word).SetEquals(Places(text.Value))
                    )
                    .Select(text =>
                        $"'{text.Key}' has {{{string.Join("}, {", Places(text.Value))}}}; expected are {{{string.Join("}, {", Places(known.texts[text.Key]))}}}"
                    )
            )
            .ToList();
        if (faults.Count > 0)
        {
            throw new FormatException(
                $"The words of a report have {faults.Count} faults: {string.Join("; ", faults)}."
            );
        }

        var all = known.texts.ToDictionary(text => text.Key, text => text.Value, StringComparer.Ordinal);
        foreach (var text in given)
        {
            all[text.Key] = text.Value;
        }

        return new ReportTexts(language, all);
    }

    /// <summary>The language.</summary>
    /// <returns>For example <c>en, 128 texts</c>.</returns>
    public override string ToString() => $"{Language}, {texts.Count} texts";

    /// <summary>A text with its places filled; braces in what fills them stand for themselves.</summary>
    internal string Say(string key, params (string Place, string Text)[] values) =>
        Place.Replace(
            texts[key],
            match =>
                values.First(value => string.Equals(value.Place, match.Groups[1].Value, StringComparison.Ordinal)).Text
        );

    private static ReportTexts Read(string language)
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream($"texts.{language}.json")
            ?? throw new InvalidOperationException($"The words of '{language}' are missing from the assembly.");
        using var reader = new StreamReader(stream);
        var (tag, texts) = Document(reader.ReadToEnd());
        return new ReportTexts(tag, texts);
    }

    private static (string Language, Dictionary<string, string> Texts) Document(string json)
    {
        const string Expected =
            "The words of a report are JSON such as { \"language\": \"en\", \"texts\": { \"severity.alarm\": \"alarm\" } }";
        try
        {
            using var document = JsonDocument.Parse(json);
            var texts = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var text in document.RootElement.GetProperty("texts").EnumerateObject())
            {
                if (texts.ContainsKey(text.Name))
                {
                    throw new FormatException($"The words of a report have '{text.Name}' twice.");
                }

                texts.Add(
                    text.Name,
                    text.Value.GetString() ?? throw new FormatException($"{Expected}; '{text.Name}' is null.")
                );
            }

            var language = document.RootElement.GetProperty("language").GetString() ?? "";
            return Regex.IsMatch(
                language,
                "^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$",
                RegexOptions.None,
                TimeSpan.FromSeconds(1)
            )
                ? (language, texts)
                : throw new FormatException($"{Expected}; '{language}' is no language tag.");
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            throw new FormatException($"{Expected}: {fault.Message}", fault);
        }
    }

    private static HashSet<string> Places(string text) =>
        [.. Place.Matches(text).Cast<Match>().Select(match => match.Groups[1].Value)];
}
