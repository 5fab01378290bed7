using System.Globalization;
using System.Text.Json;

namespace OilCondition.Text;

/// <summary>
/// An object of a JSON document with its place in it. A field is asked for by its kind: text, number, word, moment, object or list. What is
/// not as asked becomes a fault with its place, and the answer is null; reading goes on, so that all faults are named together.
/// </summary>
internal sealed partial class JsonEntry
{
    private const string Root = "$";
    private const string NoteField = "note";
    private const string MomentForm = "yyyy-MM-ddTHH:mm:ss.FFFFFFFzzz";

    private static readonly JsonDocumentOptions Options = new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        AllowDuplicateProperties = false,
    };

    private readonly JsonElement element;
    private readonly Reading reading;
    private readonly List<string> faults;
    private readonly int faultsBefore;

    private JsonEntry(JsonElement element, string path, Reading reading)
    {
        this.element = element;
        this.reading = reading;
        faults = reading.Faults;
        faultsBefore = faults.Count;
        Path = path;
    }

    /// <summary>Place in the document, <c>$</c> for its root.</summary>
    public string Path { get; }

    /// <summary>Names of the fields, in order.</summary>
    public IEnumerable<string> Names => element.EnumerateObject().Select(one => one.Name);

    /// <summary>Reads a document whose root is an object; one message names all its faults.</summary>
    /// <param name="json">The text.</param>
    /// <param name="format">What the text should be.</param>
    /// <param name="read">Reads the root; what it returns beside faults is not used.</param>
    /// <exception cref="FormatException">The text is no JSON, or has faults.</exception>
    public static T Read<T>(string json, JsonFormat format, Func<JsonEntry, T?> read)
        where T : class
    {
        Guard.NotNull(json);
        try
        {
            var reading = new Reading { PassesUnknown = format.KeepsUnknown };
            using var document = Parsed(json, reading.Faults);
            var root = new JsonEntry(document.RootElement, Root, reading);
            T? result = null;
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                root.Fault(format.Expected);
            }
            else if (format.IsReadable(root, out var isNewer))
            {
                reading.PassesUnknown |= isNewer;
                result = read(root);
            }

            return reading.Faults.Count == 0 && result is not null
                ? result
                : throw new FormatException(
                    $"The {format.What} has faults:" + string.Concat(reading.Faults.Select(fault => "\n- " + fault))
                );
        }
        catch (Exception error) when (error is JsonException or ArgumentException)
        {
            // An argument error is half of a surrogate pair in the text.
            throw new FormatException($"The {format.What} is not JSON: {error.Message}", error);
        }
        catch (InvalidOperationException error)
        {
            // An escape such as \uD800 is JSON, but no text.
            throw new FormatException($"The {format.What} has a text that is not Unicode: {error.Message}", error);
        }
    }

    /// <summary>
    /// States the fields of this object; every other one is a fault, since a misspelt one must not be lost. A document that programs keep, and one of
    /// a version in which fields were added, may have others: see <see cref="JsonFormat"/>.
    /// </summary>
    public void Known(params string[] names)
    {
        if (names.Contains(NoteField, StringComparer.Ordinal))
        {
            TextOrEmpty(NoteField);
        }

        if (reading.PassesUnknown)
        {
            return;
        }

        foreach (var name in Names.Where(name => !names.Contains(name, StringComparer.Ordinal)))
        {
            if (Path != Root || !JsonFormat.RootFields.Contains(name, StringComparer.Ordinal))
            {
                Fault(name, $"unknown; allowed: {string.Join(", ", names)}.");
            }
        }
    }

    /// <summary>The note of an object that may have one; empty for none. <see cref="Known"/> has named it where it is no text.</summary>
    public string Note =>
        element.TryGetProperty(NoteField, out var note) && note.ValueKind == JsonValueKind.String
            ? note.GetString()!
            : "";

    /// <summary>Whether there is such a field; one that is null is left out.</summary>
    public bool Has(string name) =>
        element.TryGetProperty(name, out var field) && field.ValueKind != JsonValueKind.Null;

    /// <summary>A fault of this object as a whole.</summary>
    public void Fault(string fault) => faults.Add($"{Path}: {fault}");

    /// <summary>A fault of one of its fields.</summary>
    public void Fault(string name, string fault) => faults.Add($"{Path}.{name}: {fault}");

    /// <summary>A value whose making refuses bad arguments; the refusal becomes a fault of this object.</summary>
    public T? Made<T>(Func<T?> make)
        where T : class
    {
        try
        {
            return make();
        }
        catch (ArgumentException error)
        {
            Fault(error.Message.Split('\n')[0]);
            return null;
        }
    }

    /// <summary>A text that must be there.</summary>
    public string? Text(string name)
    {
        if (
            element.TryGetProperty(name, out var field)
            && field.ValueKind == JsonValueKind.String
            && !string.IsNullOrWhiteSpace(field.GetString())
        )
        {
            return field.GetString();
        }

        Fault(name, "a text is expected.");
        return null;
    }

    /// <summary>A text that must be there, but may be blank.</summary>
    public string? AnyText(string name)
    {
        if (element.TryGetProperty(name, out var field) && field.ValueKind == JsonValueKind.String)
        {
            return field.GetString();
        }

        Fault(name, "a text is expected.");
        return null;
    }

    /// <summary>A text that may be left out: then, and with a fault, it is empty.</summary>
    public string TextOrEmpty(string name) => Has(name) ? Text(name) ?? "" : "";

    /// <summary>A number that must be there.</summary>
    public double? Number(string name)
    {
        if (
            element.TryGetProperty(name, out var field)
            && field.ValueKind == JsonValueKind.Number
            && field.TryGetDouble(out var value)
            && Guard.IsFinite(value)
        )
        {
            return value;
        }

        Fault(name, "a number is expected.");
        return null;
    }

    /// <summary>A number that must be there, within a range.</summary>
    public double? Number(string name, double lowest, double highest, string unit)
    {
        var value = Number(name);
        if (value is null || (value >= lowest && value <= highest))
        {
            return value;
        }

        Fault(name, $"{Plain(value.Value)} {unit}; allowed: {Plain(lowest)} to {Plain(highest)} {unit}.");
        return null;
    }

    /// <summary>A number that may be left out.</summary>
    public double? NumberIfAny(string name) => Has(name) ? Number(name) : null;

    /// <inheritdoc cref="Number(string, double, double, string)"/>
    public double? NumberIfAny(string name, double lowest, double highest, string unit) =>
        Has(name) ? Number(name, lowest, highest, unit) : null;

    /// <summary>A whole number that may be left out.</summary>
    public int? WholeIfAny(string name, int lowest, int highest)
    {
        var value = NumberIfAny(name);
        if (value is null)
        {
            return null;
        }

        if (value >= lowest && value <= highest && Math.Floor(value.Value) == value)
        {
            return (int)value.Value;
        }

        Fault(name, $"{Plain(value.Value)}; allowed: a whole number from {lowest} to {highest}.");
        return null;
    }

    /// <summary>True or false, which may be left out.</summary>
    public bool? FlagIfAny(string name)
    {
        if (!Has(name))
        {
            return null;
        }

        var field = element.GetProperty(name);
        if (field.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return field.GetBoolean();
        }

        Fault(name, "true or false is expected.");
        return null;
    }

    /// <summary>One of the words that stand for members of an enumeration, such as <c>change-from-new</c>; it must be there.</summary>
    /// <param name="name">The field.</param>
    public T? Word<T>(string name)
        where T : struct, Enum
    {
        var allowed = Members<T>();
        if (Text(name) is not { } text)
        {
            return null;
        }

        foreach (var value in allowed)
        {
            if (PlainText.Kebab(value) == text)
            {
                return value;
            }
        }

        Fault(name, $"'{text}'; allowed: {string.Join(", ", allowed.Select(value => PlainText.Kebab(value)))}.");
        return null;
    }

    /// <inheritdoc cref="Word{T}(string)"/>
    public T? WordIfAny<T>(string name)
        where T : struct, Enum => Has(name) ? Word<T>(name) : null;

    /// <summary>A moment with its offset, such as <c>2026-03-14T06:15:00+01:00</c> or <c>…Z</c>, that must be there.</summary>
    public DateTimeOffset? Moment(string name)
    {
        if (Text(name) is not { } text)
        {
            return null;
        }

        var written = text[text.Length - 1] == 'Z' ? text.Substring(0, text.Length - 1) + "+00:00" : text;
        if (
            DateTimeOffset.TryParseExact(
                written,
                MomentForm,
                CultureInfo.InvariantCulture,
                DateTimeStyles.None,
                out var at
            )
        )
        {
            return at;
        }

        Fault(name, $"'{text}' is not a moment such as 2026-03-14T06:15:00+00:00.");
        return null;
    }

    /// <summary>A moment that may be left out.</summary>
    public DateTimeOffset? MomentIfAny(string name) => Has(name) ? Moment(name) : null;

    /// <summary>All members of an enumeration, in order.</summary>
    public static IReadOnlyList<T> Members<T>()
        where T : struct, Enum =>
#if NET
        Enum.GetValues<T>();
#else
        [.. Enum.GetValues(typeof(T)).Cast<T>()];
#endif

    /// <summary>Whether nothing has been found wrong since the reading of this object began.</summary>
    public bool IsFaultless => faults.Count == faultsBefore;

    /// <summary>
    /// A field of each object in a list, as far as it is a text: what the list names, be it read or not, so that one fault does not make others.
    /// </summary>
    public IReadOnlyCollection<string> NamesIn(string list, string field) =>
        element.TryGetProperty(list, out var items) && items.ValueKind == JsonValueKind.Array
            ?
            [
                .. items
                    .EnumerateArray()
                    .Where(item => item.ValueKind == JsonValueKind.Object)
                    .Select(item => item.TryGetProperty(field, out var name) ? name : default)
                    .Where(name => name.ValueKind == JsonValueKind.String)
                    .Select(name => name.GetString()!),
            ]
            : [];

    /// <summary>The document; a name that an object has twice is a fault with its place, and not the last one that wins.</summary>
    private static JsonDocument Parsed(string json, List<string> faults)
    {
        try
        {
            return JsonDocument.Parse(json, Options);
        }
        catch (JsonException)
        {
            // The library stops at the first name that comes twice. What is no JSON at all fails here again.
            var document = JsonDocument.Parse(json, Options with { AllowDuplicateProperties = true });
            Twice(document.RootElement, Root, faults);
            return document;
        }
    }

    private static void Twice(JsonElement element, string path, List<string> faults)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var (item, i) in element.EnumerateArray().Select((item, i) => (item, i)))
            {
                Twice(item, $"{path}[{i}]", faults);
            }
        }

        if (element.ValueKind != JsonValueKind.Object)
        {
            return;
        }

        foreach (var fields in element.EnumerateObject().GroupBy(one => one.Name, StringComparer.Ordinal))
        {
            if (fields.Count() > 1)
            {
                faults.Add($"{path}.{fields.Key}: is there {fields.Count()} times; which one holds cannot be known.");
            }

            foreach (var field in fields)
            {
                Twice(field.Value, $"{path}.{field.Name}", faults);
            }
        }
    }

    private static string Plain(double value) => value.ToString("G7", CultureInfo.InvariantCulture);

    /// <summary>What all objects of one document share while it is read.</summary>
    private sealed class Reading
    {
        public List<string> Faults { get; } = [];

        public bool PassesUnknown { get; set; }
    }
}
