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
            json.WriteWord("state", state.Worst.State);
            json.WriteWord("reason", state.Worst.Reason);
            json.WriteStartArray("limits");
            foreach (var limit in state.Limits)
            {
                Evaluation(json, limit);
            }

            json.WriteEndArray();
            Point(json, "latest", state.Measurand, state.Latest);
            json.WriteWord("topUps", state.TopUps);
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
        var limit = evaluation.Limit;
        json.WriteStartObject();
        json.WriteWord("kind", limit.Kind);
        json.WriteWord("state", evaluation.State);
        json.WriteWord("reason", evaluation.Reason);
        Band(json, "upper", evaluation.Upper);
        Band(json, "lower", evaluation.Lower);
        json.WriteString("unit", limit.Measurand.Unit);
        Span(json, limit);
        Rate(json, evaluation);
        if (evaluation.Side is { } side)
        {
            json.WriteWord("side", side);
            json.WriteFigure("passed", evaluation.Figure);
        }

        json.WriteMoment("since", evaluation.Since);
        if (evaluation.Pending >= LimitState.Alert)
        {
            json.WriteWord("pending", evaluation.Pending);
        }

        json.WriteSource("source", limit.Source);
        Missing(json, limit.MissingFigures);
        json.WriteEndObject();
    }

    /// <summary>What a fleet did not give; left out where it gave everything, or no fleet was asked.</summary>
    private static void Missing(Utf8JsonWriter json, IReadOnlyList<Limit.MissingFigure> figures)
    {
        if (figures.Count == 0)
        {
            return;
        }

        json.WriteStartArray("missingFigures");
        foreach (var figure in figures)
        {
            json.WriteStartObject();
            json.WriteWord("side", figure.Side);
            json.WriteWord("zone", figure.Zone);
            json.WriteFigure("percentile", figure.Percentile);
            json.WriteWord("reason", figure.Reason);
            json.WriteNumber("charges", figure.Charges);
            json.WriteNumber("chargesNeeded", figure.ChargesNeeded);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>The latest rate of change, in the unit and per the span of its limit.</summary>
    private static void Rate(Utf8JsonWriter json, LimitEvaluation evaluation)
    {
        if (evaluation.Rate is not { } rate)
        {
            return;
        }

        json.WriteStartObject("rate");
        json.WriteFigure("value", rate);
        json.WriteString("unit", evaluation.Limit.Measurand.Unit);
        json.WriteWord("scale", NaturalScale.Linear);
        Span(json, evaluation.Limit);
        json.WriteEndObject();
    }

    private static void Span(Utf8JsonWriter json, Limit limit)
    {
        if (limit.Per is { } span)
        {
            json.WriteFigure(
                limit.OverOilHours ? "perOilHours" : "perDays",
                limit.OverOilHours ? span.TotalHours : span.TotalDays
            );
        }
    }

    private static void Trend(Utf8JsonWriter json, MeasurandState state)
    {
        var trend = state.Trend.Assessment;
        json.WriteStartObject("trend");
        json.WriteWord("verdict", trend.Verdict);
        json.WriteWord("method", trend.Method);
        json.WriteStartArray("reasons");
        foreach (var reason in trend.Reasons)
        {
            json.WriteStringValue(PlainText.Kebab(reason));
        }

        json.WriteEndArray();
        json.WriteString("axis", state.Trend.Series.IsOverOilHours ? "oil-hours" : "calendar");
        json.WriteFigure("oilHoursPerDay", state.Trend.Series.OilHoursPerDay);
        Slope(json, state.Trend);
        json.WriteFigure("chanceByScatter", trend.PValue);
        json.WriteNumber("readingsUsed", trend.Used.Count);
        json.WriteStartArray("leftOut");
        foreach (var left in state.Trend.Judged.LeftOut)
        {
            json.WriteStartObject();
            Point(json, "reading", state.Measurand, left);
            json.WriteWord("reason", left.LeftOut!.Value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>On the logarithmic scale a slope is one of the natural logarithm, which has no unit.</summary>
    private static void Slope(Utf8JsonWriter json, SeriesTrend series)
    {
        var trend = series.Assessment;
        json.WriteStartObject("slope");
        json.WriteFigure("value", trend.Slope);
        json.WriteFigure("lower", trend.SlopeInterval.Lower);
        json.WriteFigure("upper", trend.SlopeInterval.Upper);
        json.WriteString("unit", trend.Scale == NaturalScale.Logarithmic ? "" : series.Series.Measurand.Unit);
        json.WriteWord("scale", trend.Scale);
        json.WriteNumber("perDays", 1);
        json.WriteEndObject();
    }

    private static void First(Utf8JsonWriter json, FirstCrossing first)
    {
        json.WriteStartArray("firstLimit");
        foreach (var share in first.Shares)
        {
            json.WriteStartObject();
            json.WriteString("measurand", share.Life.Series.Measurand.Id);
            json.WriteWord("side", share.Life.Side);
            json.WriteFigure("limit", share.Life.Limit);
            json.WriteString("unit", share.Life.Series.Measurand.Unit);
            json.WriteFigure("chanceOfBeingFirst", share.Chance);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Next(Utf8JsonWriter json, NextSample? next)
    {
        if (next is null)
        {
            return;
        }

        json.WriteStartObject("nextSample");
        json.WriteMoment("at", next.At);
        json.WriteWord("reason", next.Reason);
        json.WriteBoolean("overdue", next.IsOverdue);
        json.WriteEndObject();
    }

    private static void Life(Utf8JsonWriter json, RemainingLife life)
    {
        json.WriteStartObject();
        json.WriteWord("side", life.Side);
        json.WriteFigure("limit", life.Limit);
        json.WriteString("unit", life.Series.Measurand.Unit);
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
            // An assessment states no make-up; whoever did would see the limit not approached.
            RemainingLife.NotApproaching or RemainingLife.HeldByMakeUp => "not-approaching",
            _ => "too-few-readings",
        };
}
