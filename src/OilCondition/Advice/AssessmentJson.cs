using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using OilCondition.Prognosis;
using OilCondition.Water;

namespace OilCondition.Advice;

/// <summary>Writes an assessment as JSON: facts as numbers with units, and the sentence beside them.</summary>
internal static class AssessmentJson
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(ConditionAssessment assessment)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteString("machine", assessment.History.Machine.Id);
            json.WriteString("name", assessment.History.Machine.Name);
            json.WriteString("oil", assessment.History.Machine.Oil.Name);
            json.WriteString("asOf", assessment.Options.AsOf);
            json.WriteString("charge", assessment.Charge.ToString());
            json.WriteString("chargeSince", assessment.Charge.Since);
            json.WriteString("limitSet", assessment.Limits.Name);
            json.WriteString("worst", Words.Kebab(assessment.Worst));
            json.WriteString("cleanlinessCode", assessment.Cleanliness?.ToString());
            Water(json, assessment.Water);
            States(json, assessment.States);
            Findings(json, assessment.Findings);
            Alerts(json, assessment.Alerts);
            Recommendations(json, assessment.Recommendations);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Water(Utf8JsonWriter json, WaterBalance water)
    {
        json.WriteStartObject("water");
        if (water is WaterBalance.Split split)
        {
            json.WriteString("outcome", "split");
            json.WriteString("total", split.Point.Reading.ToString());
            json.WriteString("readAt", split.Point.At);
            State(json, "running", split.Running);
            State(json, "standstill", split.Standstill);
            json.WriteString("separation", Words.Kebab(split.Separation.Outcome));
            Number(json, "separationCelsius", split.Separation.Temperature.DegreesCelsius);
            if (split.FreeAtStandstill is { } free)
            {
                Number(json, "freeAtStandstillLitres", free.Liters);
            }

            json.WriteString("curve", split.Curve.Name);
            json.WriteString("curveSource", split.Curve.Source.ToString());
        }
        else
        {
            json.WriteString(
                "outcome",
                water is WaterBalance.NoSaturationCurve ? "no-saturation-curve" : "no-water-reading"
            );
        }

        json.WriteEndObject();
    }

    private static void State(Utf8JsonWriter json, string name, WaterState state)
    {
        json.WriteStartObject(name);
        Number(json, "celsius", state.Saturation.Temperature.DegreesCelsius);
        Number(json, "saturationMgPerKg", state.Saturation.Content.PartsPerMillion);
        Number(json, "dissolvedMgPerKg", state.Dissolved.PartsPerMillion);
        Number(json, "freeMgPerKg", state.Free.PartsPerMillion);
        Number(json, "relativeSaturationPercent", state.RelativeSaturation.Percent);
        json.WriteBoolean("extrapolated", state.Saturation.IsExtrapolated);
        json.WriteEndObject();
    }

    private static void States(Utf8JsonWriter json, IReadOnlyList<MeasurandState> states)
    {
        json.WriteStartArray("states");
        foreach (var state in states)
        {
            json.WriteStartObject();
            json.WriteString("measurand", state.Measurand.Id);
            json.WriteString("unit", state.Measurand.Unit);
            json.WriteString("state", Words.Kebab(state.Evaluation.State));
            json.WriteString("reason", Words.Kebab(state.Evaluation.Reason));
            json.WriteString("limitSource", state.Evaluation.Limit.Source.ToString());
            if (state.Latest is { } latest)
            {
                json.WriteString("latest", latest.Reading.ToString());
                json.WriteString("readAt", latest.At);
            }

            json.WriteStartArray("remainingLife");
            foreach (var life in state.Life)
            {
                Life(json, life);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Life(Utf8JsonWriter json, RemainingLife life)
    {
        json.WriteStartObject();
        Number(json, "limit", life.Limit);
        json.WriteString("outcome", OutcomeOf(life));
        if (life is RemainingLife.Crosses crosses)
        {
            json.WriteString("p10", crosses.P10.At);
            json.WriteString("p50", crosses.P50.At);
            json.WriteString("p90", crosses.P90.At);
        }

        if (life is RemainingLife.LateEndOpen open)
        {
            json.WriteString("p10", open.P10.At);
        }

        json.WriteEndObject();
    }

    private static string OutcomeOf(RemainingLife life) =>
        life switch
        {
            RemainingLife.Crosses => "crosses",
            RemainingLife.LateEndOpen => "late-end-open",
            RemainingLife.AlreadyCrossed => "already-crossed",
            RemainingLife.NotApproaching => "not-approaching",
            _ => "too-few-readings",
        };

    private static void Findings(Utf8JsonWriter json, IReadOnlyList<Finding> findings)
    {
        json.WriteStartArray("findings");
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("code", Words.Kebab(finding.Code));
            json.WriteString("severity", Words.Kebab(finding.Severity));
            json.WriteString("measurand", finding.Measurand.Id);
            json.WriteString("sentence", Sentences.Of(finding));
            Evidence(json, "evidence", finding.Evidence);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Alerts(Utf8JsonWriter json, IReadOnlyList<Alert> alerts)
    {
        json.WriteStartArray("alerts");
        foreach (var alert in alerts)
        {
            json.WriteStartObject();
            json.WriteString("key", alert.Key);
            json.WriteString("severity", Words.Kebab(alert.Severity));
            json.WriteStartArray("sentences");
            foreach (var finding in alert.Findings)
            {
                json.WriteStringValue(Sentences.Of(finding));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Recommendations(Utf8JsonWriter json, IReadOnlyList<Recommendation> recommendations)
    {
        json.WriteStartArray("recommendations");
        foreach (var recommendation in recommendations)
        {
            json.WriteStartObject();
            json.WriteString("action", Words.Kebab(recommendation.Action));
            json.WriteString("severity", Words.Kebab(recommendation.Severity));
            json.WriteString("sentence", Sentences.Of(recommendation));
            json.WriteStartArray("reasons");
            foreach (var reason in recommendation.Reasons)
            {
                json.WriteStringValue($"{Words.Kebab(reason.Code)}/{reason.Measurand.Id}");
            }

            json.WriteEndArray();
            Evidence(json, "quantities", recommendation.Quantities);
            json.WriteStartArray("cautions");
            foreach (var caution in recommendation.Cautions)
            {
                json.WriteStringValue(Sentences.Of(caution));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Evidence(Utf8JsonWriter json, string name, IReadOnlyList<EvidenceItem> evidence)
    {
        json.WriteStartArray(name);
        foreach (var item in evidence)
        {
            json.WriteStartObject();
            json.WriteString("name", item.Name);
            if (item.Value is { } value)
            {
                Number(json, "value", value);
                json.WriteString("unit", item.Unit);
            }
            else
            {
                json.WriteString("text", item.Text);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>Seven significant figures: more than any reading carries, and the same digits on every framework.</summary>
    private static void Number(Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(value.ToString("G7", System.Globalization.CultureInfo.InvariantCulture));
    }
}
