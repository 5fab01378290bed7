using System.Text.Json;
using OilCondition.Text;

namespace OilCondition.Limits;

/// <summary>Writes a limit set so that it is read back to the last digit.</summary>
internal static class LimitSetJson
{
    public static JsonOutput Of(LimitSet set) =>
        new(
            JsonFormat.LimitSet,
            json =>
            {
                json.WriteString("name", set.Name);
                json.WriteText("note", set.Note);
                json.WriteList("limits", set.Limits, limit => One(json, limit));
            }
        );

    private static void One(Utf8JsonWriter json, Limit limit)
    {
        json.WriteString("measurand", limit.Measurand.Id);
        json.WriteWord("kind", limit.Kind);
        json.WriteString("unit", LimitFigures.IsPercentage(limit.Kind) ? "%" : limit.Measurand.Unit);
        Band(json, "upper", limit.Upper);
        Band(json, "lower", limit.Lower);
        if (limit.DeadBand > 0)
        {
            json.WriteExact("deadBand", limit.DeadBand);
        }

        json.WriteNumber("confirmations", limit.Confirmations);
        if (limit.Per is { } span)
        {
            json.WriteExact(
                limit.OverOilHours ? "perOilHours" : "perDays",
                limit.OverOilHours ? span.TotalHours : span.TotalDays
            );
        }

        json.WriteSource("source", limit.Source);
        json.WriteText("note", limit.Note);
    }

    private static void Band(Utf8JsonWriter json, string name, LimitBand? band)
    {
        if (band is null)
        {
            return;
        }

        json.WriteStartObject(name);
        json.WriteExact("alert", band.Alert);
        json.WriteExact("alarm", band.Alarm);
        json.WriteEndObject();
    }
}
