using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Purification;
using OilCondition.Sampling;
using OilCondition.Water;

namespace OilCondition.Advice;

/// <summary>Writes an assessment as JSON: facts as numbers with units, and the sentence beside them.</summary>
internal static partial class AssessmentJson
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
            Moment(json, "asOf", assessment.Options.AsOf);
            json.WriteString("charge", assessment.Charge.ToString());
            Moment(json, "chargeSince", assessment.Charge.Since);
            json.WriteString("limitSet", assessment.Limits.Name);
            json.WriteString("worst", Words.Kebab(assessment.Worst));
            json.WriteString("cleanlinessCode", assessment.Cleanliness?.ToString());
            Water(json, assessment.Water);
            Cleanup(json, assessment.Cleanup);
            States(json, assessment);
            First(json, assessment.First);
            Next(json, assessment.NextSample);
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
            Point(json, "total", split.Point);
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

    private static void Cleanup(Utf8JsonWriter json, CleanupProgress? progress)
    {
        if (progress is null)
        {
            json.WriteNull("cleanup");
            return;
        }

        json.WriteStartObject("cleanup");
        json.WriteString("treatment", Words.Kebab(progress.Run.Kind));
        json.WriteString("measurand", progress.Run.Measurand.Id);
        Moment(json, "startedAt", progress.Run.At);
        Number(json, "target", progress.Run.Target);
        Number(json, "readingsUsed", progress.Points.Count);
        Number(json, "readingsNotUsed", progress.NotUsed);
        switch (progress.TimeToTarget)
        {
            case TimeToTarget.Expected expected:
                json.WriteString("outcome", "expected");
                Moment(json, "earliest", expected.Earliest);
                Moment(json, "expected", expected.Estimate);
                Moment(json, "latest", expected.Latest);
                break;
            case TimeToTarget.NotDemonstrated open:
                json.WriteString("outcome", "not-demonstrated");
                Moment(json, "earliest", open.Earliest);
                break;
            case TimeToTarget.Reached reached:
                json.WriteString("outcome", "reached");
                Moment(json, "at", reached.At);
                break;
            case TimeToTarget.OutOfReach:
                json.WriteString("outcome", "out-of-reach");
                break;
            case TimeToTarget.TooFewAboveLimit:
                json.WriteString("outcome", "too-few-above-limit");
                break;
            default:
                json.WriteString("outcome", "too-few-readings");
                break;
        }

        if (progress.Curve.HasCurve)
        {
            Number(json, "ratePerHour", progress.Curve.RatePerHour);
            Number(json, "floor", progress.Curve.Floor);
            Number(json, "observedTimeConstants", progress.Curve.ObservedTimeConstants);
        }

        json.WriteEndObject();
    }

    private static void States(Utf8JsonWriter json, ConditionAssessment assessment)
    {
        json.WriteStartArray("states");
        foreach (var state in assessment.States)
        {
            json.WriteStartObject();
            json.WriteString("measurand", state.Measurand.Id);
            json.WriteString("unit", state.Measurand.Unit);
            json.WriteString("state", Words.Kebab(state.Evaluation.State));
            json.WriteString("reason", Words.Kebab(state.Evaluation.Reason));
            json.WriteString("limitSource", state.Evaluation.Limit.Source.ToString());
            json.WriteString("limitKind", Words.Kebab(state.Evaluation.Limit.Kind));
            Band(json, "upper", state.Evaluation.Upper);
            Band(json, "lower", state.Evaluation.Lower);
            if (state.Evaluation.Rate is { } rate)
            {
                Number(json, "rate", rate);
            }

            if (state.Evaluation.Since is { } since)
            {
                Moment(json, "since", since);
            }

            if (state.Evaluation.Pending >= LimitState.Alert)
            {
                json.WriteString("pending", Words.Kebab(state.Evaluation.Pending));
            }

            if (state.Latest is { } latest)
            {
                Point(json, "latest", latest);
            }

            json.WriteString("topUps", Words.Kebab(state.TopUps.Outcome));
            Trend(json, state);
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

    private static void Trend(Utf8JsonWriter json, MeasurandState state)
    {
        var trend = state.Trend.Assessment;
        json.WriteStartObject("trend");
        json.WriteString("verdict", Words.Kebab(trend.Verdict));
        json.WriteString("method", Words.Kebab(trend.Method));
        json.WriteStartArray("reasons");
        foreach (var reason in trend.Reasons)
        {
            json.WriteStringValue(Words.Kebab(reason));
        }

        json.WriteEndArray();
        json.WriteString("axis", Words.Kebab(state.Trend.Series.Axis));
        json.WriteString("scale", Words.Kebab(trend.Scale));
        Number(json, "slopePerDay", trend.Slope);
        Number(json, "chanceByScatter", trend.PValue);
        Number(json, "readingsUsed", trend.Used.Count);
        json.WriteStartArray("leftOut");
        foreach (var left in state.Trend.Judged.LeftOut)
        {
            json.WriteStartObject();
            Point(json, "reading", left.Point);
            json.WriteString("reason", Words.Kebab(left.Reason));
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
            Number(json, "limit", share.Life.Limit);
            Number(json, "chanceOfBeingFirst", share.Chance);
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
        Moment(json, "at", next.At);
        json.WriteString("reason", Words.Kebab(next.Reason));
        json.WriteBoolean("overdue", next.IsOverdue);
        json.WriteEndObject();
    }

    private static void Life(Utf8JsonWriter json, RemainingLife life)
    {
        json.WriteStartObject();
        Number(json, "limit", life.Limit);
        json.WriteString("outcome", OutcomeOf(life));
        if (life is RemainingLife.Crosses crosses)
        {
            Moment(json, "p10", crosses.P10.At);
            Moment(json, "p50", crosses.P50.At);
            Moment(json, "p90", crosses.P90.At);
        }

        if (life is RemainingLife.LateEndOpen open)
        {
            Moment(json, "p10", open.P10.At);
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
            RemainingLife.HeldByMakeUp => "held-by-make-up",
            _ => "too-few-readings",
        };

    private static void Point(Utf8JsonWriter json, string name, SeriesPoint point)
    {
        json.WriteStartObject(name);
        Number(json, "value", point.Reading.Value);
        json.WriteString("qualifier", Words.Kebab(point.Reading.Qualifier));
        Moment(json, "at", point.At);
        json.WriteString("from", point.SampleNumber.Length == 0 ? "sensor" : point.SampleNumber);
        json.WriteEndObject();
    }

    private static void Band(Utf8JsonWriter json, string name, LimitBand? band)
    {
        if (band is null)
        {
            return;
        }

        json.WriteStartObject(name);
        if (band.Alert is { } alert)
        {
            Number(json, "alert", alert);
        }

        if (band.Alarm is { } alarm)
        {
            Number(json, "alarm", alarm);
        }

        json.WriteEndObject();
    }

    /// <summary>ISO 8601 to the second, with its offset.</summary>
    private static void Moment(Utf8JsonWriter json, string name, DateTimeOffset at) =>
        json.WriteString(name, at.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture));

    /// <summary>Seven significant figures: more than any reading carries, and the same digits on every framework.</summary>
    private static void Number(Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(value.ToString("G7", CultureInfo.InvariantCulture));
    }
}
