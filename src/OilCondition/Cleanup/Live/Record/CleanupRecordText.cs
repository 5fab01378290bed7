using System.Globalization;
using System.Text;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Writes a record for people.</summary>
internal static class CleanupRecordText
{
    public static string Write(CleanupRecord record)
    {
        var status = record.Status;
        var text = new StringBuilder();
        void Line(string name, string value) => text.Append(name.PadRight(22)).Append(value).Append('\n');

        text.Append("Cleanup of ").Append(record.Facts.Machine).Append('\n');
        Line("Verdict", Of(record.Verdict));
        Line("From, to", $"{At(record.Start)} to {At(record.End)}, {N(record.Length.TotalHours)} h");
        if (status.HasTemperature)
        {
            Line(
                "Oil temperature",
                $"{N(status.LowestTemperature.DegreesCelsius)} to {N(status.HighestTemperature.DegreesCelsius)} °C, last {N(status.Temperature.DegreesCelsius)} °C"
            );
        }

        Line(
            "Oil passed",
            $"{N(record.VolumePassed.Liters)} L, {N(record.Turnovers)} turnovers ({(record.IsVolumeMetered ? "metered" : "flow times duration")})"
        );
        Line(
            "Water",
            $"{N(record.Facts.Before.PartsPerMillion)} mg/kg before"
                + (status.HasWater ? $", {N(status.LatestWater.PartsPerMillion)} mg/kg last" : "")
                + (status.HasWaterTarget ? $", target {N(status.WaterTargetMgPerKg)} mg/kg" : "")
        );
        Line("Lost by the oil", Of(record.WaterRemoved));
        Line("Came in meanwhile", record.IsIngressKnown ? Of(record.WaterCameIn) : "not known, counted as none");
        Line("Drawn off", Of(record.WaterDrawnOff));
        Line("Condensate", OfCondensate(record));
        if (record.HasCodes)
        {
            Line("Code before, after", $"{record.CodeBefore}, {record.CodeAfter}");
        }

        var curve = status.Curve;
        Line(
            "Fit",
            curve.HasCurve
                ? $"floor {N(curve.Floor)} mg/kg, rate {N(curve.RatePerHour)} 1/h, scatter {N(curve.ResidualStandardDeviation)} mg/kg, "
                    + $"{curve.Count.ToString(CultureInfo.InvariantCulture)} readings{(curve.CoverageInDoubt ? ", intervals too narrow" : "")}"
                : "too few readings"
        );
        if (status.Stall != CleanupStall.None && !status.IsMet)
        {
            Line("Stalled", StallWords.Of(status.StalledPart) + ": " + StallWords.Of(status.StallEvidence));
        }

        if (status.IsMet)
        {
            Line("Target met", $"{At(status.MetAt)}, after {N(status.Options.HoldFor.TotalHours)} h at or below");
        }

        if (status.HasRebounded)
        {
            Line("Rebound seen", At(status.ReboundAt));
        }

        if (record.HasReboundCheck)
        {
            Line("Rebound check due", At(record.ReboundCheckDue));
        }

        if (record.Diagnosis is { } diagnosis)
        {
            text.Append(diagnosis);
        }

        return text.ToString();
    }

    /// <summary>An interval is printed where an end is open, or differs from the estimate in the figures that are printed.</summary>
    private static string Of(CleanupFigure<Volume> figure)
    {
        if (!figure.HasEstimate)
        {
            return "not determined";
        }

        var estimate = N(figure.Estimate.Liters);
        var lower = figure.HasLower ? N(figure.Lower.Liters) : "open";
        var upper = figure.HasUpper ? N(figure.Upper.Liters) : "open";
        return lower == estimate && upper == estimate ? $"{estimate} L" : $"{estimate} L ({lower} to {upper} L)";
    }

    private static string OfCondensate(CleanupRecord record)
    {
        if (record.Facts.Condensate is not { } litres)
        {
            return Of(record.Condensate);
        }

        var text = $"{N(litres.Liters)} L: {Of(record.Condensate)}";
        if (!record.HasCondensateDifference)
        {
            return text;
        }

        var difference = record.CondensateDifference.Liters;
        text += $", {N(Math.Abs(difference))} L {(difference < 0 ? "less" : "more")} than drawn off";
        if (record.Condensate == CondensateAgreement.MoreCollected && record.Length.TotalHours > 0)
        {
            text +=
                $" (as an ingress {N(WaterContent.WaterDensity.KilogramsPerCubicMeter * difference / record.Length.TotalHours)} g/h)";
        }

        return record.CondensateReasons.Count == 0
            ? text
            : text + "; it can be " + string.Join(", ", record.CondensateReasons.Select(Of));
    }

    private static string Of(CondensateReason reason) =>
        reason switch
        {
            CondensateReason.VapourWithExhaust => "vapour with the exhaust",
            CondensateReason.DrainedElsewhere => "water drained elsewhere or still in the unit",
            CondensateReason.LessWaterBefore => "less water before than the sample said",
            CondensateReason.WaterCameIn => "water that came in",
            CondensateReason.StandingWater => "water from the bottom of the tank",
            _ => "moisture of the sweep air",
        };

    private static string Of(CleanupVerdict verdict) =>
        verdict switch
        {
            CleanupVerdict.TargetMet => "target met and held",
            CleanupVerdict.HoldNotCompleted => "at the target, holding time not over",
            CleanupVerdict.NotReached => "target not reached",
            CleanupVerdict.Stalled => "levels off above the target",
            CleanupVerdict.Rebounded => "target met and lost again",
            _ => "not determined",
        };

    private static string Of(CondensateAgreement agreement) =>
        agreement switch
        {
            CondensateAgreement.Agrees => "agrees with the balance",
            CondensateAgreement.LessCollected => "does not agree",
            CondensateAgreement.MoreCollected => "does not agree",
            CondensateAgreement.NotMeasured => "not measured",
            _ => "no balance to compare with",
        };

    private static string N(double value) => PlainText.Number(value);

    private static string At(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);
}
