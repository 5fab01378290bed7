using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Writes a source as <see cref="SourceReader"/> reads it.</summary>
internal static class SourceWriter
{
    public static void WriteSource(this Utf8JsonWriter json, string name, Source source)
    {
        json.WriteStartObject(name);
        json.WriteWord("kind", source.Kind);
        json.WriteString("text", source.Text);
        json.WriteText("locator", source.Locator);
        json.WriteEndObject();
    }
}
