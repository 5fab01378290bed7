using System.Text.Json;
using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Text;
using OilCondition.Water;

namespace OilCondition;

/// <summary>Writes an assessment as JSON: facts as numbers with units, and the sentence beside them.</summary>
internal static partial class AssessmentJson
{
    public static JsonOutput Of(ConditionAssessment assessment) =>
        new(
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
                json.WriteWord("worst", assessment.Worst);
                Options(json, assessment.Options);
                json.WriteText("cleanlinessCode", assessment.Cleanliness?.ToString());
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

    /// <summary>How it was made, as far as that changes the outcome; the moment stands in the root.</summary>
    private static void Options(Utf8JsonWriter json, AssessmentOptions options)
    {
        json.WriteStartObject("options");
        json.WriteFigure("planningHorizonDays", options.PlanningHorizon.TotalDays);
        json.WriteFigure("confidence", options.Confidence);
        json.WriteFigure("trendSignificance", options.TrendSignificance);
        json.WriteBoolean("overOilHours", options.OverOilHours);
        json.WriteFigure("samplingRisk", options.Sampling.Risk.DecimalFractions);
        json.WriteFigure("shortestSamplingDays", options.Sampling.Shortest.TotalDays);
        json.WriteFigure("longestSamplingDays", options.Sampling.Longest.TotalDays);
        json.WriteStartArray("fleetMeasurands");
        foreach (var known in options.Fleet)
        {
            json.WriteStringValue(known.Measurand.Id);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Water(Utf8JsonWriter json, WaterInOil water)
    {
        json.WriteStartObject("water");
        if (water is WaterInOil.Split split)
        {
            json.WriteString("outcome", "split");
            Point(json, "total", Measurands.WaterContent, split.Point);
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
            json.WriteSource("curveSource", split.Curve.Source);
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
            return;
        }

        json.WriteStartObject("cleanup");
        json.WriteWord("treatment", progress.Run.Kind);
        json.WriteString("measurand", progress.Run.Measurand.Id);
        json.WriteMoment("startedAt", progress.Run.At);
        json.WriteFigure("target", progress.Run.Target);
        json.WriteString("unit", progress.Run.Measurand.Unit);
        var status = progress.Status;
        var curve = status.Curve;
        json.WriteWord("phase", status.Phase);
        json.WriteString("follows", status.FollowsSensor ? "sensor" : "samples");
        json.WriteNumber("readingsUsed", curve.Count);
        json.WriteNumber("readingsNotUsed", curve.LeftOutReadings.Count);
        json.WriteFigure("holdHours", status.Options.HoldFor.TotalHours);
        switch (status.Arrival)
        {
            case Arrival<DateTimeOffset>.Already met:
                json.WriteString("outcome", "reached");
                json.WriteMoment("reachedAt", met.At);
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

        json.WriteCautions(progress.Cautions);
        if (status.Contradiction is { } apart)
        {
            json.WriteObject(
                "contradiction",
                () =>
                {
                    json.WriteFigure("samples", apart.SampleMean);
                    json.WriteFigure("sensor", apart.SensorMean);
                    json.WriteFigure("uncertainty", apart.Uncertainty);
                    json.WriteNumber("readings", apart.Count);
                }
            );
        }

        json.WriteEndObject();
    }

    /// <summary>A reading with where it comes from; none where there is none.</summary>
    private static void Point(Utf8JsonWriter json, string name, Measurand measurand, SeriesPoint? point)
    {
        if (point is null)
        {
            return;
        }

        json.WriteStartObject(name);
        json.WriteFigure("value", point.Reading.Value);
        json.WriteString("unit", measurand.Unit);
        json.WriteWord("qualifier", point.Reading.Qualifier);
        json.WriteMoment("at", point.At);
        json.WriteString("origin", point.SampleNumber.Length == 0 ? "sensor" : "sample");
        json.WriteText("sampleNumber", point.SampleNumber);
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
