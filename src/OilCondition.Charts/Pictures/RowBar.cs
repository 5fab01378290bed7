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
}
