using System.Globalization;
using System.Text;
using OilCondition.Guards;
using UnitsNet;

namespace OilCondition.Purification;

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
        Line("From, to", $"{At(record.Start)} to {At(record.End)}, {N(record.Length.Hours)} h");
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
        Line("Removed by balance", Of(record.WaterRemoved));
        Line(
            "Condensate",
            (record.Facts.Condensate is { } litres ? N(litres.Liters) + " L: " : "") + Of(record.Condensate)
        );
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
        if (status.IsMet)
        {
            Line("Target met", $"{At(status.MetAt)}, after {N(status.Options.HoldFor.Hours)} h at or below");
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

    private static string Of(CleanupFigure<Volume> figure) =>
        !figure.HasEstimate
            ? "not determined"
            : $"{N(figure.Estimate.Liters)} L ({(figure.HasLower ? N(figure.Lower.Liters) : "open")} to {(figure.HasUpper ? N(figure.Upper.Liters) : "open")} L)";

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
            CondensateAgreement.LessCollected => "less than left the oil",
            CondensateAgreement.MoreCollected => "more than left the oil",
            CondensateAgreement.NotMeasured => "not measured",
            _ => "no balance to compare with",
        };

    private static string N(double value) => PlainText.Number(value);

    private static string At(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);
}
