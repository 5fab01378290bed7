using System.Text.Json;
using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Text;
using OilCondition.Water;

namespace OilCondition;

/// <summary>Writes an assessment as JSON: facts as numbers with units, and the sentence beside them.</summary>
internal static partial class AssessmentJson
{
    public static string Write(ConditionAssessment assessment) =>
        JsonText.Write(
            JsonFormat.Assessment,
            json =>
            {
                json.WriteString("machine", assessment.History.Machine.Id);
                json.WriteString("name", assessment.History.Machine.Name);
                json.WriteString("oil", assessment.History.Machine.Oil.Name);
                json.WriteMoment("asOf", assessment.Options.AsOf);
                json.WriteString("charge", assessment.Charge.ToString());
                json.WriteMoment("chargeSince", assessment.Charge.Since);
                json.WriteString("limitSet", assessment.Limits.Name);
                json.WriteString("worst", PlainText.Kebab(assessment.Worst));
                json.WriteString("cleanlinessCode", assessment.Cleanliness?.ToString());
                Water(json, assessment.Water);
                Cleanup(json, assessment.Cleanup);
                States(json, assessment);
                First(json, assessment.First);
                Next(json, assessment.NextSample);
                Problems(json, assessment.Problems);
                Alerts(json, assessment.Alerts);
                Recommendations(json, assessment.Recommendations);
            }
        );

    private static void Water(Utf8JsonWriter json, WaterInOil water)
    {
        json.WriteStartObject("water");
        if (water is WaterInOil.Split split)
        {
            json.WriteString("outcome", "split");
            Point(json, "total", split.Point);
            State(json, "running", split.Running);
            State(json, "standstill", split.Standstill);
            json.WriteString(
                "separation",
                split.Separation.StaysDissolved ? "stays-dissolved"
                    : split.Separation.StaysFree ? "stays-free"
                    : "separates-below"
            );
            json.WriteFigure("separationCelsius", split.Separation.Temperature.DegreesCelsius);
            if (split.FreeAtStandstill is { } free)
            {
                json.WriteFigure("freeAtStandstillLitres", free.Liters);
            }

            json.WriteString("curve", split.Curve.Name);
            json.WriteString("curveSource", split.Curve.Source.ToString());
        }
        else
        {
            json.WriteString(
                "outcome",
                water is WaterInOil.NoSaturationCurve ? "no-saturation-curve" : "no-water-reading"
            );
        }

        json.WriteEndObject();
    }

    private static void State(Utf8JsonWriter json, string name, WaterState state)
    {
        json.WriteStartObject(name);
        json.WriteFigure("celsius", state.Saturation.Temperature.DegreesCelsius);
        json.WriteFigure("saturationMgPerKg", state.Saturation.Content.PartsPerMillion);
        json.WriteFigure("dissolvedMgPerKg", state.Dissolved.PartsPerMillion);
        json.WriteFigure("freeMgPerKg", state.Free.PartsPerMillion);
        json.WriteFigure("relativeSaturationPercent", state.RelativeSaturation.Percent);
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
        json.WriteString("treatment", PlainText.Kebab(progress.Run.Kind));
        json.WriteString("measurand", progress.Run.Measurand.Id);
        json.WriteMoment("startedAt", progress.Run.At);
        json.WriteFigure("target", progress.Run.Target);
        var status = progress.Status;
        var curve = status.Curve;
        json.WriteWord("phase", status.Phase);
        json.WriteString("follows", status.FollowsSensor ? "sensor" : "samples");
        json.WriteFigure("readingsUsed", curve.Count);
        json.WriteFigure("readingsNotUsed", curve.LeftOutReadings.Count);
        json.WriteFigure("holdHours", status.Options.HoldFor.TotalHours);
        switch (status.Arrival)
        {
            case Arrival<DateTimeOffset>.Already met:
                json.WriteString("outcome", "reached");
                json.WriteMoment("at", met.At);
                break;
            case Arrival<DateTimeOffset>.Expected expected:
                json.WriteString("outcome", "expected");
                json.WriteMoment("earliest", expected.Earliest);
                json.WriteMoment("expected", expected.Estimate);
                json.WriteMoment("latest", expected.Latest);
                json.WriteBoolean("pastDue", progress.IsPastDue);
                break;
            case Arrival<DateTimeOffset>.NotBefore open:
                json.WriteString("outcome", "not-before");
                json.WriteMoment("earliest", open.Earliest);
                break;
            case Arrival<DateTimeOffset>.Never:
                json.WriteString("outcome", "never");
                break;
            default:
                json.WriteString("outcome", "not-determined");
                break;
        }

        if (status.Reason != CompletionReason.None)
        {
            json.WriteWord("reason", status.Reason);
        }

        if (curve.HasCurve)
        {
            json.WriteFigure("ratePerHour", curve.RatePerHour);
            json.WriteFigure("floor", curve.Floor);
            json.WriteFigure("observedTimeConstants", curve.ObservedTimeConstants);
        }

        json.WriteWords("cautions", progress.Cautions);
        if (status.Contradiction is { } apart)
        {
            json.WriteObject(
                "contradiction",
                () =>
                {
                    json.WriteFigure("samples", apart.SampleMean);
                    json.WriteFigure("sensor", apart.SensorMean);
                    json.WriteFigure("uncertainty", apart.Uncertainty);
                    json.WriteFigure("readings", apart.Count);
                }
            );
        }

        json.WriteEndObject();
    }

    private static void Point(Utf8JsonWriter json, string name, SeriesPoint point)
    {
        json.WriteStartObject(name);
        json.WriteFigure("value", point.Reading.Value);
        json.WriteString("qualifier", PlainText.Kebab(point.Reading.Qualifier));
        json.WriteMoment("at", point.At);
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
            json.WriteFigure("alert", alert);
        }

        if (band.Alarm is { } alarm)
        {
            json.WriteFigure("alarm", alarm);
        }

        json.WriteEndObject();
    }
}
