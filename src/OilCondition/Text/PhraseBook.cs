using System.Reflection;
using System.Text;
using System.Text.Json;

namespace OilCondition.Text;

/// <summary>Phrases of one language, each under its key. A figure or name stands in braces, as in <c>{count} readings</c>.</summary>
internal sealed class PhraseBook
{
    private readonly Dictionary<string, Phrase> phrases;

    private PhraseBook(string language, Dictionary<string, Phrase> phrases)
    {
        Language = language;
        this.phrases = phrases;
    }

    /// <summary>Language tag after BCP 47.</summary>
    public string Language { get; }

    public IEnumerable<string> Keys => phrases.Keys;

    public string this[string key] => phrases[key].Text;

    /// <summary>The book that is embedded in an assembly.</summary>
    public static PhraseBook Shipped(Assembly assembly, string resource) =>
        Read(Resource(assembly, resource), resource);

    /// <summary>The text that is embedded in an assembly.</summary>
    public static string Resource(Assembly assembly, string resource)
    {
        using var stream =
            assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"{resource} is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>A book of phrases in place of known ones; those left out stay. All faults are reported together.</summary>
    /// <param name="json">For example <c>{ "language": "en", "texts": { "word.alarm": "alarm" } }</c>.</param>
    /// <param name="what">What the book is called in faults.</param>
    /// <param name="known">The phrases that there are.</param>
    /// <param name="mayAdd">Whether a key that is not known may be given, as a name that need not be there.</param>
    public static PhraseBook Parse(string json, string what, PhraseBook known, Func<string, bool> mayAdd)
    {
        var given = Read(json, what);
        var faults = given
            .phrases.Where(phrase => !known.phrases.ContainsKey(phrase.Key) && !mayAdd(phrase.Key))
            .Select(phrase => $"'{phrase.Key}' is no key of it")
            .Concat(
                given
                    .phrases.Where(phrase =>
                        known.phrases.TryGetValue(phrase.Key, out var same) && !same.HasPlacesOf(phrase.Value)
                    )
                    .Select(phrase =>
                        $"'{phrase.Key}' has {phrase.Value.PlaceList}; expected are {known.phrases[phrase.Key].PlaceList}"
                    )
            )
            .OrderBy(fault => fault, StringComparer.Ordinal)
            .ToList();
        if (faults.Count > 0)
        {
            throw new FormatException($"In {what}: {faults.Count} faults: {string.Join("; ", faults)}.");
        }

        var all = new Dictionary<string, Phrase>(known.phrases, StringComparer.Ordinal);
        foreach (var phrase in given.phrases)
        {
            all[phrase.Key] = phrase.Value;
        }

        return new PhraseBook(given.Language, all);
    }

    public bool TryGet(string key, out string text)
    {
        var isKnown = phrases.TryGetValue(key, out var phrase);
        text = phrase?.Text ?? "";
        return isKnown;
    }

    /// <summary>A phrase with its places filled; braces in what fills them stand for themselves.</summary>
    public string Say(string key, params ReadOnlySpan<(string Place, string Text)> values) =>
        phrases[key].Filled(values);

    private static PhraseBook Read(string json, string what)
    {
        var expected =
            $"In {what}: expected is JSON such as {{ \"language\": \"en\", \"texts\": {{ \"word.alarm\": \"alarm\" }} }}";
        try
        {
            using var document = JsonDocument.Parse(json);
            var read = new Dictionary<string, Phrase>(StringComparer.Ordinal);
            foreach (var text in document.RootElement.GetProperty("texts").EnumerateObject())
            {
                var words = text.Value.GetString() ?? throw new FormatException($"{expected}; '{text.Name}' is null.");
                if (read.ContainsKey(text.Name))
                {
                    throw new FormatException($"In {what} '{text.Name}' stands twice.");
                }

                read.Add(text.Name, new Phrase(words));
            }

            var language = document.RootElement.GetProperty("language").GetString() ?? "";
            return IsTag(language)
                ? new PhraseBook(language, read)
                : throw new FormatException($"{expected}; '{language}' is no language tag.");
        }
        catch (Exception fault) when (fault is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            throw new FormatException($"{expected}: {fault.Message}", fault);
        }
    }

    private static bool IsTag(string language) =>
        language.Length is >= 2 and <= 35
        && language
            .Split('-')
            .All(part =>
                part.Length is >= 1 and <= 8
                && part.All(letter => letter is (>= 'a' and <= 'z') or (>= 'A' and <= 'Z') or (>= '0' and <= '9'))
            );

    /// <summary>A text cut at its places once, since it is filled many times.</summary>
    private sealed class Phrase
    {
        private readonly List<(string Before, string Place)> parts = [];
        private readonly string end;

        public Phrase(string text)
        {
            Text = text;
            var from = 0;
            for (var open = text.IndexOf('{'); open >= 0; open = text.IndexOf('{', open + 1))
            {
                var close = text.IndexOf('}', open);
                if (close > open + 1 && text.Substring(open + 1, close - open - 1).All(char.IsLetterOrDigit))
                {
                    parts.Add((text.Substring(from, open - from), text.Substring(open + 1, close - open - 1)));
                    from = close + 1;
                }
            }

            end = text.Substring(from);
        }

        public string Text { get; }

        public string PlaceList =>
            parts.Count == 0
                ? "no places"
                : string.Join(
                    ", ",
                    parts
                        .Select(part => $"{{{part.Place}}}")
                        .Distinct(StringComparer.Ordinal)
                        .OrderBy(one => one, StringComparer.Ordinal)
                );

        public bool HasPlacesOf(Phrase other) => string.Equals(PlaceList, other.PlaceList, StringComparison.Ordinal);

        public string Filled(ReadOnlySpan<(string Place, string Text)> values)
        {
            if (parts.Count == 0)
            {
                return Text;
            }

            var filled = new StringBuilder();
            foreach (var (before, place) in parts)
            {
                filled.Append(before).Append(Value(place, values));
            }

            return filled.Append(end).ToString();
        }

        private static string Value(string place, ReadOnlySpan<(string Place, string Text)> values)
        {
            foreach (var value in values)
            {
                if (string.Equals(value.Place, place, StringComparison.Ordinal))
                {
                    return value.Text;
                }
            }

            throw new ArgumentException($"A phrase asks for '{place}', which is not given.", nameof(values));
        }
    }
}
