using System.Globalization;
using System.Text;
using OilCondition.Text;
using OilCondition.Water;

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
        if (status is { LowestTemperature: { } lowest, HighestTemperature: { } highest, Temperature: { } oil })
        {
            Line(
                "Oil temperature",
                $"{N(lowest.DegreesCelsius)} to {N(highest.DegreesCelsius)} °C, last {N(oil.DegreesCelsius)} °C"
            );
        }

        Line(
            "Oil passed",
            $"{N(record.VolumePassed.Liters)} L, {N(record.Turnovers)} turnovers ({(record.IsVolumeMetered ? "metered" : "flow times duration")})"
        );
        Line(
            "Water",
            $"{N(record.Facts.Before.PartsPerMillion)} mg/kg before"
                + (status.Latest is { } last ? $", {N(last.Value)} mg/kg last" : "")
                + (status.Options.Target is { } target ? $", target {N(target)} mg/kg" : "")
        );
        Line("Lost by the oil", record.WaterRemoved.ToString());
        Line("Came in meanwhile", record.WaterCameIn?.ToString() ?? "not known, counted as none");
        Line("Drawn off", record.WaterDrawnOff.ToString());
        if (record.Facts.ExhaustShare is { DecimalFractions: > 0 } exhaust)
        {
            Line("To be condensed", $"{record.CondensateExpected}, {N(exhaust.Percent)} % leaves with the exhaust");
        }

        Line("Condensate", OfCondensate(record));
        if (record is { CodeBefore: { } before, CodeAfter: { } after })
        {
            Line("Code before, after", $"{before}, {after}");
        }

        var curve = status.Curve;
        Line(
            "Fit",
            curve.HasCurve
                ? $"floor {N(curve.Floor)} mg/kg, rate {N(curve.RatePerHour)} 1/h, scatter {N(curve.ScatterAt(curve.ValueAt(curve.LastReadingAt)))} mg/kg at the end, "
                    + $"{curve.Count.ToString(CultureInfo.InvariantCulture)} readings{(curve.CoverageInDoubt ? ", intervals too narrow" : "")}"
                : "too few readings"
        );
        if (status.Contradiction is { } contradiction)
        {
            Line("Sources disagree", contradiction.ToString());
        }

        if (status.StalledPart is { } part && !status.IsMet)
        {
            Line("Stalled", part.Name + ": " + StallWords.Of(status.StallEvidence));
        }

        if (status.MetAt is { } met)
        {
            Line("Target met", $"{At(met)}, after {N(status.Options.HoldFor.TotalHours)} h at or below");
        }

        if (status.ReboundAt is { } rebound)
        {
            Line("Rebound seen", At(rebound));
        }

        if (record.ReboundCheckDue is { } due)
        {
            Line("Rebound check due", At(due));
        }

        if (record.Diagnosis is { } diagnosis)
        {
            text.Append(diagnosis.ToText());
        }

        return text.ToString();
    }

    private static string OfCondensate(CleanupRecord record)
    {
        if (record.Facts.Condensate is not { } litres)
        {
            return Of(record.Balance.Agreement);
        }

        var text = $"{N(litres.Liters)} L: {Of(record.Balance.Agreement)}";
        if (record.CondensateDifference is not { } volume)
        {
            return text;
        }

        var difference = volume.Liters;
        text +=
            $", {N(Math.Abs(difference))} L {(difference < 0 ? "less" : "more")} than {(record.Facts.ExhaustShare is { DecimalFractions: > 0 } ? "to be condensed" : "drawn off")}";
        if (record.Balance.Agreement == CondensateAgreement.MoreCollected && record.Length.TotalHours > 0)
        {
            text +=
                $" (as an ingress {N(WaterContent.WaterDensity.KilogramsPerCubicMeter * difference / record.Length.TotalHours)} g/h)";
        }

        return record.Balance.Reasons.Count == 0
            ? text
            : text + "; it can be " + string.Join(", ", record.Balance.Reasons.Select(Of));
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

    public static string Of(CleanupVerdict verdict) =>
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
