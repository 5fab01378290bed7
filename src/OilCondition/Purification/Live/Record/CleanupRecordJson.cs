using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace OilCondition.Purification;

/// <summary>Writes a record as JSON.</summary>
internal static class CleanupRecordJson
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(CleanupRecord record)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteString("machine", record.Facts.Machine);
            json.WriteString("verdict", Word(record.Verdict));
            Moment(json, "start", record.Start);
            Moment(json, "end", record.End);
            json.WriteNumber("lengthHours", record.Length.Hours);
            Temperatures(json, record.Status);
            json.WriteNumber("volumePassedLitres", record.VolumePassed.Liters);
            json.WriteBoolean("volumeMetered", record.IsVolumeMetered);
            json.WriteNumber("turnovers", record.Turnovers);
            Water(json, record);
            Particles(json, record);
            Curve(json, record.Status);
            Holding(json, record);
            Diagnosis(json, record.Diagnosis);
            json.WriteStartArray("cautions");
            foreach (var caution in record.Cautions)
            {
                json.WriteStringValue(Word(caution));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Temperatures(Utf8JsonWriter json, CleanupStatus status)
    {
        if (!status.HasTemperature)
        {
            return;
        }

        json.WriteStartObject("temperatureCelsius");
        json.WriteNumber("lowest", status.LowestTemperature.DegreesCelsius);
        json.WriteNumber("highest", status.HighestTemperature.DegreesCelsius);
        json.WriteNumber("last", status.Temperature.DegreesCelsius);
        json.WriteNumber("reference", status.Options.ReferenceTemperature.DegreesCelsius);
        json.WriteBoolean("referred", status.Options.IsReferred);
        json.WriteEndObject();
    }

    private static void Water(Utf8JsonWriter json, CleanupRecord record)
    {
        json.WriteStartObject("water");
        json.WriteString("source", Word(record.Status.FollowedSource));
        json.WriteNumber("beforeMgPerKg", record.Facts.Before.PartsPerMillion);
        if (record.Status.HasWater)
        {
            json.WriteNumber("lastMgPerKg", record.Status.LatestWater.PartsPerMillion);
        }

        if (record.Status.HasWaterTarget)
        {
            json.WriteNumber("targetMgPerKg", record.Status.WaterTargetMgPerKg);
        }

        json.WriteStartObject("removedByBalanceLitres");
        Optional(json, "estimate", record.WaterRemoved.HasEstimate, record.WaterRemoved.Estimate.Liters);
        Optional(json, "lower", record.WaterRemoved.HasLower, record.WaterRemoved.Lower.Liters);
        Optional(json, "upper", record.WaterRemoved.HasUpper, record.WaterRemoved.Upper.Liters);
        json.WriteNumber("confidence", record.WaterRemoved.Confidence);
        json.WriteString("outcome", Word(record.WaterRemoved.Outcome));
        json.WriteEndObject();
        Optional(
            json,
            "condensateLitres",
            record.Facts.Condensate.HasValue,
            record.Facts.Condensate.GetValueOrDefault().Liters
        );
        json.WriteString("condensate", Word(record.Condensate));
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
        json.WriteString("status", Word(curve.Status));
        json.WriteNumber("readings", curve.Count);
        json.WriteNumber("leftOut", curve.LeftOutReadings.Count);
        if (curve.HasCurve)
        {
            var rate = curve.RateIntervalPerHour(status.Confidence);
            var floor = curve.FloorInterval(status.Confidence);
            Moment(json, "origin", curve.Origin);
            json.WriteNumber("startMgPerKg", curve.Start);
            json.WriteNumber("floorMgPerKg", curve.Floor);
            Optional(json, "floorLowerMgPerKg", floor.HasLower, floor.Lower);
            Optional(json, "floorUpperMgPerKg", floor.HasUpper, floor.Upper);
            json.WriteNumber("ratePerHour", curve.RatePerHour);
            Optional(json, "rateLowerPerHour", rate.HasLower, rate.Lower);
            Optional(json, "rateUpperPerHour", rate.HasUpper, rate.Upper);
            json.WriteNumber("scatterMgPerKg", curve.ResidualStandardDeviation);
            json.WriteBoolean("coverageInDoubt", curve.CoverageInDoubt);
        }

        json.WriteNumber("confidence", status.Confidence);
        json.WriteEndObject();
    }

    private static void Holding(Utf8JsonWriter json, CleanupRecord record)
    {
        var status = record.Status;
        json.WriteStartObject("holding");
        json.WriteNumber("requiredHours", status.Options.HoldFor.Hours);
        if (status.IsHolding)
        {
            Moment(json, "since", status.HoldingSince);
        }

        if (status.IsMet)
        {
            Moment(json, "metAt", status.MetAt);
        }

        if (status.HasRebounded)
        {
            Moment(json, "reboundAt", status.ReboundAt);
        }

        if (record.HasReboundCheck)
        {
            Moment(json, "reboundCheckDue", record.ReboundCheckDue);
        }

        json.WriteEndObject();
    }

    private static void Diagnosis(Utf8JsonWriter json, StallDiagnosis? diagnosis)
    {
        if (diagnosis is null)
        {
            return;
        }

        json.WriteStartObject("diagnosis");
        json.WriteString("verdict", Word(diagnosis.Verdict));
        json.WriteStartArray("causes");
        foreach (var cause in diagnosis.Causes)
        {
            json.WriteStartObject();
            json.WriteString("cause", Word(cause.Kind));
            json.WriteNumber("share", cause.Share.DecimalFractions);
            json.WriteStartArray("evidence");
            foreach (var item in cause.Evidence)
            {
                json.WriteStartObject();
                json.WriteString("name", item.Name);
                json.WriteNumber("value", item.Value);
                json.WriteString("unit", item.Unit);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("checks");
            foreach (var check in cause.Checks)
            {
                json.WriteStringValue(Word(check));
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Optional(Utf8JsonWriter json, string name, bool exists, double value)
    {
        if (exists)
        {
            json.WriteNumber(name, value);
        }
    }

    private static void Moment(Utf8JsonWriter json, string name, DateTimeOffset at) =>
        json.WriteString(name, at.ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture));

    private static string Word(Enum value) => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());
}
