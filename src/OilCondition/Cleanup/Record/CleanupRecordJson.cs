using System.Text.Json;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Writes a record as JSON.</summary>
internal static class CleanupRecordJson
{
    public static JsonOutput Of(CleanupRecord record) =>
        new(
            JsonFormat.CleanupRecord,
            json =>
            {
                var status = record.Status;
                json.WriteString("machine", record.Facts.Machine);
                json.WriteWord("verdict", record.Verdict);
                json.WriteMoment("start", record.Start);
                json.WriteMoment("end", record.End);
                json.WriteFigure("lengthHours", record.Length.TotalHours);
                if (status.Temperature is { } oil)
                {
                    json.WriteObject(
                        "temperatureCelsius",
                        () =>
                        {
                            json.WriteFigure("lowest", status.LowestTemperature?.DegreesCelsius);
                            json.WriteFigure("highest", status.HighestTemperature?.DegreesCelsius);
                            json.WriteFigure("last", oil.DegreesCelsius);
                            json.WriteFigure("reference", status.Options.ReferenceTemperature.DegreesCelsius);
                            json.WriteBoolean("referred", status.Options.IsReferred);
                        }
                    );
                }

                json.WriteFigure("volumePassedLitres", record.VolumePassed.Liters);
                json.WriteBoolean("volumeMetered", record.IsVolumeMetered);
                json.WriteFigure("turnovers", record.Turnovers);
                json.WriteObject("water", () => Water(json, record));
                if (record is { CodeBefore: { } before, CodeAfter: { } after })
                {
                    json.WriteObject(
                        "cleanlinessCode",
                        () =>
                        {
                            json.WriteString("before", before.ToString());
                            json.WriteString("after", after.ToString());
                            if (status.Options.Code is { } target)
                            {
                                json.WriteString("target", target.ToString());
                            }
                        }
                    );
                }

                json.WriteObject("fit", () => Curve(json, status));
                json.WriteObject(
                    "holding",
                    () =>
                    {
                        json.WriteFigure("requiredHours", status.Options.HoldFor.TotalHours);
                        json.WriteMoment("since", status.HoldingSince);
                        json.WriteMoment("metAt", status.MetAt);
                        json.WriteMoment("reboundAt", status.ReboundAt);
                        json.WriteMoment("reboundCheckDue", record.ReboundCheckDue);
                    }
                );
                if (status.Contradiction is { } apart)
                {
                    json.WriteObject(
                        "contradiction",
                        () =>
                        {
                            json.WriteFigure("sampleMgPerKg", apart.SampleMean);
                            json.WriteFigure("sensorMgPerKg", apart.SensorMean);
                            json.WriteFigure("uncertaintyMgPerKg", apart.Uncertainty);
                            json.WriteFigure("readings", apart.Count);
                        }
                    );
                }

                if (status.StalledPart is { } part)
                {
                    json.WriteObject(
                        "stall",
                        () =>
                        {
                            json.WriteString("part", part.Id);
                            json.WriteWord("sign", status.StallSign);
                            json.WriteEvidence("evidence", status.StallEvidence);
                        }
                    );
                }

                if (record.Diagnosis is { } diagnosis)
                {
                    json.WriteObject("diagnosis", () => Diagnosis(json, diagnosis));
                }

                json.WriteWords("cautions", record.Cautions);
            }
        );

    private static void Water(Utf8JsonWriter json, CleanupRecord record)
    {
        var status = record.Status;
        json.WriteString(
            "source",
            status.Latest is null ? "none"
                : status.FollowsSensor ? "sensor"
                : "titration"
        );
        json.WriteFigure("beforeMgPerKg", record.Facts.Before.PartsPerMillion);
        json.WriteFigure("lastMgPerKg", status.Latest?.Value);
        json.WriteFigure("targetMgPerKg", status.Options.Target);
        Litres(json, "removedByBalanceLitres", record.WaterRemoved);
        Litres(json, "cameInLitres", record.WaterCameIn);
        Litres(json, "drawnOffLitres", record.WaterDrawnOff);
        json.WriteFigure("exhaustShare", record.Facts.ExhaustShare?.DecimalFractions);
        if (record.Facts.ExhaustShare.HasValue)
        {
            Litres(json, "condensateExpectedLitres", record.CondensateExpected);
        }

        json.WriteFigure("condensateLitres", record.Facts.Condensate?.Liters);
        json.WriteFigure("condensateDifferenceLitres", record.CondensateDifference?.Liters);
        json.WriteWord("condensate", record.Balance.Agreement);
        json.WriteWords("condensateReasons", record.Balance.Reasons);
    }

    private static void Litres(Utf8JsonWriter json, string name, CleanupFigure<Volume>? figure)
    {
        if (figure is null)
        {
            return;
        }

        json.WriteObject(
            name,
            () =>
            {
                json.WriteFigure("estimate", figure.Estimate?.Liters);
                json.WriteFigure("lower", figure.Lower?.Liters);
                json.WriteFigure("upper", figure.Upper?.Liters);
                json.WriteFigure("confidence", figure.Confidence);
                json.WriteWord("outcome", figure.Outcome);
            }
        );
    }

    private static void Curve(Utf8JsonWriter json, CleanupStatus status)
    {
        var curve = status.Curve;
        json.WriteWord("status", curve.Status);
        json.WriteNumber("readings", curve.Count);
        json.WriteNumber("leftOut", curve.LeftOutReadings.Count);
        if (curve.HasCurve)
        {
            var rate = curve.RateIntervalPerHour(status.Confidence);
            var floor = curve.FloorInterval(status.Confidence);
            json.WriteMoment("origin", curve.Origin);
            json.WriteFigure("startMgPerKg", curve.Start);
            json.WriteFigure("floorMgPerKg", curve.Floor);
            json.WriteFigure("floorLowerMgPerKg", floor.Lower);
            json.WriteFigure("floorUpperMgPerKg", floor.Upper);
            json.WriteFigure("ratePerHour", curve.RatePerHour);
            json.WriteFigure("rateLowerPerHour", rate.Lower);
            json.WriteFigure("rateUpperPerHour", rate.Upper);
            json.WriteFigure("scatterMgPerKg", curve.ScatterAt(curve.ValueAt(curve.LastReadingAt)));
            json.WriteBoolean("coverageInDoubt", curve.CoverageInDoubt);
        }

        json.WriteFigure("confidence", status.Confidence);
    }

    private static void Diagnosis(Utf8JsonWriter json, StallDiagnosis diagnosis)
    {
        json.WriteWord("verdict", diagnosis.Verdict);
        json.WriteEvidence("evidence", diagnosis.Evidence);
        json.WriteList(
            "causes",
            diagnosis.Causes,
            cause =>
            {
                json.WriteWord("cause", cause.Kind);
                json.WriteFigure("share", cause.Share.DecimalFractions);
                json.WriteEvidence("evidence", cause.Evidence);
                json.WriteWords("checks", cause.CheckCodes);
            }
        );
    }
}
