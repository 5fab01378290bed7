using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Writes evidence: an id, and a number with its unit, a moment, or a text.</summary>
internal static class EvidenceWriter
{
    public static void WriteEvidence(this Utf8JsonWriter json, string name, IReadOnlyList<EvidenceItem> evidence)
    {
        json.WriteStartArray(name);
        foreach (var item in evidence)
        {
            json.WriteStartObject();
            json.WriteEvidence(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static void WriteEvidence(this Utf8JsonWriter json, EvidenceItem item)
    {
        json.WriteString("id", item.Id);
        if (item.Value is { } value)
        {
            json.WriteFigure("value", value);
            json.WriteString("unit", item.Unit);
        }
        else if (item.Bounded is { } bounded)
        {
            json.WriteFigure("value", bounded.Value);
            json.WriteString("unit", item.BoundedUnit);
            json.WriteWord("qualifier", bounded.Qualifier);
        }
        else if (item.At is { } at)
        {
            json.WriteMoment("at", at);
        }
        else
        {
            json.WriteString("text", item.Text);
        }
    }
}
