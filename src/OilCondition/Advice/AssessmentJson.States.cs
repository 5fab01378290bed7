using System.Text.Json;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition;

/// <content>Where each measurand stands, how it moves and how long it has.</content>
internal static partial class AssessmentJson
{
    private static void States(Utf8JsonWriter json, ConditionAssessment assessment)
    {
        json.WriteStartArray("states");
        foreach (var state in assessment.States)
        {
            json.WriteStartObject();
            json.WriteString("measurand", state.Measurand.Id);
            json.WriteString("unit", state.Measurand.Unit);
            json.WriteString("state", PlainText.Kebab(state.Worst.State));
            json.WriteString("reason", PlainText.Kebab(state.Worst.Reason));
            json.WriteStartArray("limits");
            foreach (var limit in state.Limits)
            {
                Evaluation(json, limit);
            }

            json.WriteEndArray();
            if (state.Latest is { } latest)
            {
                Point(json, "latest", latest);
            }

            json.WriteString("topUps", PlainText.Kebab(state.TopUps.Outcome));
            Trend(json, state);
            json.WriteStartArray("remainingLife");
            foreach (var life in state.Lives)
            {
                Life(json, life);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Evaluation(Utf8JsonWriter json, LimitEvaluation evaluation)
    {
        json.WriteStartObject();
        json.WriteString("kind", PlainText.Kebab(evaluation.Limit.Kind));
        json.WriteString("source", evaluation.Limit.Source.ToString());
        json.WriteString("state", PlainText.Kebab(evaluation.State));
        json.WriteString("reason", PlainText.Kebab(evaluation.Reason));
        Band(json, "upper", evaluation.Upper);
        Band(json, "lower", evaluation.Lower);
        if (evaluation.Rate is { } rate)
        {
            json.WriteFigure("rate", rate);
        }

        if (evaluation.Since is { } since)
        {
            json.WriteMoment("since", since);
        }

        if (evaluation.Pending >= LimitState.Alert)
        {
            json.WriteString("pending", PlainText.Kebab(evaluation.Pending));
        }

        json.WriteEndObject();
    }

    private static void Trend(Utf8JsonWriter json, MeasurandState state)
    {
        var trend = state.Trend.Assessment;
        json.WriteStartObject("trend");
        json.WriteString("verdict", PlainText.Kebab(trend.Verdict));
        json.WriteString("method", PlainText.Kebab(trend.Method));
        json.WriteStartArray("reasons");
        foreach (var reason in trend.Reasons)
        {
            json.WriteStringValue(PlainText.Kebab(reason));
        }

        json.WriteEndArray();
        json.WriteString("axis", state.Trend.Series.IsOverOilHours ? "oil-hours" : "calendar");
        json.WriteString("scale", PlainText.Kebab(trend.Scale));
        json.WriteFigure("slopePerDay", trend.Slope);
        json.WriteFigure("chanceByScatter", trend.PValue);
        json.WriteFigure("readingsUsed", trend.Used.Count);
        json.WriteStartArray("leftOut");
        foreach (var left in state.Trend.Judged.LeftOut)
        {
            json.WriteStartObject();
            Point(json, "reading", left);
            json.WriteString("reason", PlainText.Kebab(left.LeftOut!.Value));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void First(Utf8JsonWriter json, FirstCrossing first)
    {
        json.WriteStartArray("firstLimit");
        foreach (var share in first.Shares)
        {
            json.WriteStartObject();
            json.WriteString("measurand", share.Life.Series.Measurand.Id);
            json.WriteFigure("limit", share.Life.Limit);
            json.WriteFigure("chanceOfBeingFirst", share.Chance);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Next(Utf8JsonWriter json, NextSample? next)
    {
        if (next is null)
        {
            json.WriteNull("nextSample");
            return;
        }

        json.WriteStartObject("nextSample");
        json.WriteMoment("at", next.At);
        json.WriteString("reason", PlainText.Kebab(next.Reason));
        json.WriteBoolean("overdue", next.IsOverdue);
        json.WriteEndObject();
    }

    private static void Life(Utf8JsonWriter json, RemainingLife life)
    {
        json.WriteStartObject();
        json.WriteFigure("limit", life.Limit);
        json.WriteString("outcome", OutcomeOf(life));
        if (life is RemainingLife.Crosses crosses)
        {
            json.WriteMoment("p10", crosses.P10);
            json.WriteMoment("p50", crosses.P50);
            json.WriteMoment("p90", crosses.P90);
        }

        if (life is RemainingLife.NoLatestDate open)
        {
            json.WriteMoment("p10", open.P10);
        }

        json.WriteEndObject();
    }

    private static string OutcomeOf(RemainingLife life) =>
        life switch
        {
            RemainingLife.Crosses => "crosses",
            RemainingLife.NoLatestDate => "no-latest-date",
            RemainingLife.AlreadyCrossed => "already-crossed",
            RemainingLife.NotApproaching => "not-approaching",
            RemainingLife.HeldByMakeUp => "held-by-make-up",
            _ => "too-few-readings",
        };
}
