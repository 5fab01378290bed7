using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

/// <content>Problems with their findings, alerts and recommendations.</content>
internal static partial class AssessmentJson
{
    private static void Problems(Utf8JsonWriter json, IReadOnlyList<Problem> problems)
    {
        json.WriteStartArray("problems");
        foreach (var problem in problems)
        {
            json.WriteStartObject();
            json.WriteString("subject", problem.Subject);
            json.WriteString("topic", PlainText.Kebab(problem.Topic));
            json.WriteString("severity", PlainText.Kebab(problem.Severity));
            json.WriteString("statement", problem.Statement);
            Findings(json, problem.Findings);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Findings(Utf8JsonWriter json, IReadOnlyList<Finding> findings)
    {
        json.WriteStartArray("findings");
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("code", PlainText.Kebab(finding.Code));
            json.WriteString("severity", PlainText.Kebab(finding.Severity));
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
            json.WriteString("subject", alert.Problem.Subject);
            json.WriteString("severity", PlainText.Kebab(alert.Severity));
            json.WriteString("statement", alert.Problem.Statement);
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
            json.WriteString("action", PlainText.Kebab(recommendation.Action));
            json.WriteString("severity", PlainText.Kebab(recommendation.Severity));
            json.WriteString("sentence", Sentences.Of(recommendation));
            json.WriteStartArray("subjects");
            foreach (var problem in recommendation.Problems)
            {
                json.WriteStringValue(problem.Subject);
            }

            json.WriteEndArray();
            json.WriteStartArray("reasons");
            foreach (var reason in recommendation.Reasons)
            {
                json.WriteStringValue($"{PlainText.Kebab(reason.Code)}/{reason.Measurand.Id}");
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
                json.WriteFigure("value", value);
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
}
