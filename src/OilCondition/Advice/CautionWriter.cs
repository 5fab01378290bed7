using System.Text.Json;
using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition;

/// <summary>Writes cautions: the word of each, and the sentence beside it.</summary>
internal static class CautionWriter
{
    public static void WriteCautions(this Utf8JsonWriter json, IReadOnlyList<Caution> cautions)
    {
        json.WriteStartArray("cautions");
        foreach (var caution in cautions)
        {
            json.WriteStartObject();
            json.WriteWord("caution", caution);
            json.WriteString("sentence", Sentences.English.Of(caution));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
