using System.Text.Json;
using OilCondition.Limits;
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
            json.WriteWord("topic", problem.Topic);
            if (problem.Side is { } side)
            {
                json.WriteWord("side", side);
            }

            json.WriteWord("severity", problem.Severity);
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
            json.WriteWord("code", finding.Code);
            json.WriteWord("severity", finding.Severity);
            json.WriteString("measurand", finding.Measurand.Id);
            Facts(json, finding);
            json.WriteString("sentence", Sentences.English.Of(finding));
            json.WriteEvidence("evidence", finding.Evidence);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>What was compared with what: reading, limit, rate and slope each have one shape, whatever the finding is.</summary>
    private static void Facts(Utf8JsonWriter json, Finding finding)
    {
        var measurand = finding.Measurand;
        switch (finding)
        {
            case LimitFinding limit:
                json.WriteWord("side", limit.Side);
                Point(json, "reading", measurand, limit.Point);
                Passed(json, limit);
                Rate(json, limit.Evaluation);
                json.WriteMoment("since", limit.Evaluation.Since);
                break;
            case RemainingLifeFinding life:
                json.WriteWord("side", life.Side);
                Point(json, "reading", measurand, life.State.Latest);
                Approached(json, life);
                Slope(json, life.State.Trend);
                break;
            case ReturnFinding back:
                json.WriteWord("side", back.Side);
                Point(json, "reading", measurand, back.State.Latest);
                Slope(json, back.State.Trend);
                break;
            case SuddenChangeFinding change:
                json.WriteWord("side", change.Side);
                Point(json, "reading", measurand, change.First);
                break;
            case FreeWaterFinding water:
                Point(json, "reading", measurand, water.Balance.Point);
                break;
            case RecordFinding record:
                json.WriteStartObject("record");
                HistoryJson.Issue(json, record.Issue);
                json.WriteEndObject();
                break;
            case UnrecordedChangeFinding unrecorded:
                json.WriteStartArray("measurands");
                foreach (var state in unrecorded.States)
                {
                    json.WriteStringValue(state.Measurand.Id);
                }

                json.WriteEndArray();
                break;
        }
    }

    private static void Passed(Utf8JsonWriter json, LimitFinding finding)
    {
        var (limit, evaluation) = (finding.Evaluation.Limit, finding.Evaluation);
        json.WriteStartObject("limit");
        json.WriteWord("kind", limit.Kind);
        json.WriteWord("zone", evaluation.State >= LimitState.Alert ? evaluation.State : evaluation.Pending);
        json.WriteFigure("value", evaluation.Figure);
        json.WriteString("unit", finding.Measurand.Unit);
        Span(json, limit);
        json.WriteSource("source", limit.Source);
        json.WriteEndObject();
    }

    private static void Approached(Utf8JsonWriter json, RemainingLifeFinding finding)
    {
        var limit = finding.State.LimitOf(finding.Life);
        json.WriteStartObject("limit");
        json.WriteWord("kind", limit.Kind);
        json.WriteWord("zone", finding.State.RunsToAlarm(finding.Life) ? LimitState.Alarm : LimitState.Alert);
        json.WriteFigure("value", finding.Life.Limit);
        json.WriteString("unit", finding.Measurand.Unit);
        json.WriteSource("source", limit.Source);
        json.WriteEndObject();
    }

    private static void Alerts(Utf8JsonWriter json, IReadOnlyList<Alert> alerts)
    {
        json.WriteStartArray("alerts");
        foreach (var alert in alerts)
        {
            json.WriteStartObject();
            json.WriteString("key", alert.Key);
            json.WriteString("subject", alert.Problem.Subject);
            json.WriteWord("severity", alert.Severity);
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
            json.WriteWord("action", recommendation.Action);
            json.WriteWord("severity", recommendation.Severity);
            json.WriteString("sentence", Sentences.English.Of(recommendation));
            json.WriteStartArray("subjects");
            foreach (var problem in recommendation.Problems)
            {
                json.WriteStringValue(problem.Subject);
            }

            json.WriteEndArray();
            json.WriteStartArray("reasons");
            foreach (var reason in recommendation.Reasons)
            {
                json.WriteStartObject();
                json.WriteWord("code", reason.Code);
                json.WriteString("measurand", reason.Measurand.Id);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEvidence("quantities", recommendation.Quantities);
            json.WriteCautions(recommendation.Cautions);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
