using OilCondition.Treatment;

namespace OilCondition.Charts.Pictures;

/// <summary>A figure of one row: the middle of its cases, and what one and nine in ten come to where that is known.</summary>
internal readonly record struct RowBar(double? P10, double P50, double? P90)
{
    /// <summary>The hours of a treatment; null where half of the cases do not get by with any.</summary>
    public static RowBar? Of(TreatmentBand? hours) =>
        hours is { TimeP50: { } half } band
            ? new RowBar(band.TimeP10?.TotalHours, half.TotalHours, band.TimeP90?.TotalHours)
            : null;

    /// <summary>The figure in words.</summary>
    /// <returns>For example <c>15.7 h (14.1 to 17.5)</c>.</returns>
    public string Words(ChartTexts texts, string unit)
    {
        var open = Math.Max(P50 / 20, 1e-6);
        string Number(double value) => texts.Number(value, open);
        var middle = $"{Number(P50)} {unit}";
        return this is { P10: { } low, P90: { } high } && Number(low) != Number(high)
            ? texts.Say("{0} ({1} to {2})", middle, Number(low), Number(high))
            : middle;
    }
}
