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
}
