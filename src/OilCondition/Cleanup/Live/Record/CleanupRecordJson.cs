using System.Text.Json;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Writes a record as JSON.</summary>
internal static class CleanupRecordJson
{
    public static string Write(CleanupRecord record) =>
        JsonText.Write(json =>
        {
            json.WriteString("machine", record.Facts.Machine);
            json.WriteString("verdict", PlainText.Kebab(record.Verdict));
            json.WriteMoment("start", record.Start);
            json.WriteMoment("end", record.End);
            json.WriteFigure("lengthHours", record.Length.TotalHours);
            Temperatures(json, record.Status);
            json.WriteFigure("volumePassedLitres", record.VolumePassed.Liters);
            json.WriteBoolean("volumeMetered", record.IsVolumeMetered);
            json.WriteFigure("turnovers", record.Turnovers);
            Water(json, record);
            Particles(json, record);
            Curve(json, record.Status);
            Holding(json, record);
            Stall(json, record.Status);
            Diagnosis(json, record.Diagnosis);
            json.WriteStartArray("cautions");
            foreach (var caution in record.Cautions)
            {
                json.WriteStringValue(PlainText.Kebab(caution));
            }

            json.WriteEndArray();
        });

    private static void Temperatures(Utf8JsonWriter json, CleanupStatus status)
    {
        if (!status.HasTemperature)
        {
            return;
        }

        json.WriteStartObject("temperatureCelsius");
        json.WriteFigure("lowest", status.LowestTemperature.DegreesCelsius);
        json.WriteFigure("highest", status.HighestTemperature.DegreesCelsius);
        json.WriteFigure("last", status.Temperature.DegreesCelsius);
        json.WriteFigure("reference", status.Options.ReferenceTemperature.DegreesCelsius);
        json.WriteBoolean("referred", status.Options.IsReferred);
        json.WriteEndObject();
    }

    private static void Water(Utf8JsonWriter json, CleanupRecord record)
    {
        json.WriteStartObject("water");
        json.WriteString("source", PlainText.Kebab(record.Status.FollowedSource));
        json.WriteFigure("beforeMgPerKg", record.Facts.Before.PartsPerMillion);
        if (record.Status.HasWater)
        {
            json.WriteFigure("lastMgPerKg", record.Status.LatestWater.PartsPerMillion);
        }

        if (record.Status.HasWaterTarget)
        {
            json.WriteFigure("targetMgPerKg", record.Status.WaterTargetMgPerKg);
        }

        Litres(json, "removedByBalanceLitres", record.WaterRemoved);
        if (record.IsIngressKnown)
        {
            Litres(json, "cameInLitres", record.WaterCameIn);
        }

        Litres(json, "drawnOffLitres", record.WaterDrawnOff);
        Optional(
            json,
            "condensateLitres",
            record.Facts.Condensate.HasValue,
            record.Facts.Condensate.GetValueOrDefault().Liters
        );
        Optional(
            json,
            "condensateDifferenceLitres",
            record.HasCondensateDifference,
            record.CondensateDifference.Liters
        );
        json.WriteString("condensate", PlainText.Kebab(record.Condensate));
        json.WriteStartArray("condensateReasons");
        foreach (var reason in record.CondensateReasons)
        {
            json.WriteStringValue(PlainText.Kebab(reason));
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Litres(Utf8JsonWriter json, string name, CleanupFigure<Volume> figure)
    {
        json.WriteStartObject(name);
        Optional(json, "estimate", figure.HasEstimate, figure.Estimate.Liters);
        Optional(json, "lower", figure.HasLower, figure.Lower.Liters);
        Optional(json, "upper", figure.HasUpper, figure.Upper.Liters);
        json.WriteFigure("confidence", figure.Confidence);
        json.WriteString("outcome", PlainText.Kebab(figure.Outcome));
        json.WriteEndObject();
    }

    private static void Particles(Utf8JsonWriter json, CleanupRecord record)
    {
        if (record.HasCodes)
        {
            json.WriteStartObject("cleanlinessCode");
            json.WriteString("before", record.CodeBefore.ToString());
            json.WriteString("after", record.CodeAfter.ToString());
            if (record.Status.Options.Target.Code is { } target)
            {
                json.WriteString("target", target.ToString());
            }

            json.WriteEndObject();
        }
    }

    private static void Curve(Utf8JsonWriter json, CleanupStatus status)
    {
        var curve = status.Curve;
        json.WriteStartObject("fit");
        json.WriteString("status", PlainText.Kebab(curve.Status));
        json.WriteNumber("readings", curve.Count);
        json.WriteNumber("leftOut", curve.LeftOutReadings.Count);
        if (curve.HasCurve)
        {
            var rate = curve.RateIntervalPerHour(status.Confidence);
            var floor = curve.FloorInterval(status.Confidence);
            json.WriteMoment("origin", curve.Origin);
            json.WriteFigure("startMgPerKg", curve.Start);
            json.WriteFigure("floorMgPerKg", curve.Floor);
            Optional(json, "floorLowerMgPerKg", floor.Lower.HasValue, floor.Lower ?? 0);
            Optional(json, "floorUpperMgPerKg", floor.Upper.HasValue, floor.Upper ?? 0);
            json.WriteFigure("ratePerHour", curve.RatePerHour);
            Optional(json, "rateLowerPerHour", rate.Lower.HasValue, rate.Lower ?? 0);
            Optional(json, "rateUpperPerHour", rate.Upper.HasValue, rate.Upper ?? 0);
            json.WriteFigure("scatterMgPerKg", curve.ResidualStandardDeviation);
            json.WriteBoolean("coverageInDoubt", curve.CoverageInDoubt);
        }

        json.WriteFigure("confidence", status.Confidence);
        json.WriteEndObject();
    }

    private static void Holding(Utf8JsonWriter json, CleanupRecord record)
    {
        var status = record.Status;
        json.WriteStartObject("holding");
        json.WriteFigure("requiredHours", status.Options.HoldFor.TotalHours);
        if (status.IsHolding)
        {
            json.WriteMoment("since", status.HoldingSince);
        }

        if (status.IsMet)
        {
            json.WriteMoment("metAt", status.MetAt);
        }

        if (status.HasRebounded)
        {
            json.WriteMoment("reboundAt", status.ReboundAt);
        }

        if (record.HasReboundCheck)
        {
            json.WriteMoment("reboundCheckDue", record.ReboundCheckDue);
        }

        json.WriteEndObject();
    }

    private static void Stall(Utf8JsonWriter json, CleanupStatus status)
    {
        if (status.Stall == CleanupStall.None)
        {
            return;
        }

        json.WriteStartObject("stall");
        json.WriteString("part", PlainText.Kebab(status.StalledPart));
        json.WriteString("sign", PlainText.Kebab(status.Stall));
        Evidence(json, status.StallEvidence);
        json.WriteEndObject();
    }

    private static void Diagnosis(Utf8JsonWriter json, StallDiagnosis? diagnosis)
    {
        if (diagnosis is null)
        {
            return;
        }

        json.WriteStartObject("diagnosis");
        json.WriteString("verdict", PlainText.Kebab(diagnosis.Verdict));
        Evidence(json, diagnosis.Evidence);
        json.WriteStartArray("causes");
        foreach (var cause in diagnosis.Causes)
        {
            json.WriteStartObject();
            json.WriteString("cause", PlainText.Kebab(cause.Kind));
            json.WriteFigure("share", cause.Share.DecimalFractions);
            Evidence(json, cause.Evidence);
            json.WriteStartArray("checks");
            foreach (var check in cause.Checks)
            {
                json.WriteStringValue(PlainText.Kebab(check));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Evidence(Utf8JsonWriter json, IReadOnlyList<StallEvidence> evidence)
    {
        json.WriteStartArray("evidence");
        foreach (var item in evidence)
        {
            json.WriteStartObject();
            json.WriteString("name", item.Name);
            json.WriteFigure("value", item.Value);
            json.WriteString("unit", item.Unit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Optional(Utf8JsonWriter json, string name, bool exists, double value)
    {
        if (exists)
        {
            json.WriteFigure(name, value);
        }
    }
}
