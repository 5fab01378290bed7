using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace OilCondition.Text;

/// <summary>Writes JSON: indented, the same bytes for the same facts on every framework.</summary>
internal static class JsonText
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(Action<Utf8JsonWriter> members)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    /// <summary>ISO 8601 to the second, with its offset.</summary>
    public static void WriteMoment(this Utf8JsonWriter json, string name, DateTimeOffset at) =>
        json.WriteString(name, at.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture));

    /// <summary>Seven significant figures: more than any reading carries, and the same digits on every framework.</summary>
    public static void WriteFigure(this Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(value.ToString("G7", CultureInfo.InvariantCulture));
    }

    /// <summary>A figure; none where there is none.</summary>
    public static void WriteFigure(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } figure)
        {
            json.WriteFigure(name, figure);
        }
    }

    /// <summary>A moment; none where there is none.</summary>
    public static void WriteMoment(this Utf8JsonWriter json, string name, DateTimeOffset? at)
    {
        if (at is { } moment)
        {
            json.WriteMoment(name, moment);
        }
    }

    /// <summary>A word: the name of an enumeration member in lower case with hyphens.</summary>
    public static void WriteWord(this Utf8JsonWriter json, string name, Enum value) =>
        json.WriteString(name, PlainText.Kebab(value));

    /// <summary>A list of words.</summary>
    public static void WriteWords<T>(this Utf8JsonWriter json, string name, IEnumerable<T> values)
        where T : Enum
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteStringValue(PlainText.Kebab(value));
        }

        json.WriteEndArray();
    }

    /// <summary>An object as a member.</summary>
    public static void WriteObject(this Utf8JsonWriter json, string name, Action members)
    {
        json.WriteStartObject(name);
        members();
        json.WriteEndObject();
    }

    /// <summary>A list of objects.</summary>
    public static void WriteList<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> members)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            members(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
