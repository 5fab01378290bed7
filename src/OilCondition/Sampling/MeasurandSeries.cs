using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>One measurand on one time axis, in order of time. Censored readings stay censored.</summary>
public sealed class MeasurandSeries
{
    private readonly double[] calendarDays;
    private readonly double[] axisDays;

    internal MeasurandSeries(
        Measurand measurand,
        DateTimeOffset origin,
        IReadOnlyList<SeriesPoint> points,
        IReadOnlyList<SeriesPoint> leftOut,
        double? oilHoursPerDay = null
    )
    {
        Measurand = measurand;
        Origin = origin;
        Points = points;
        LeftOut = leftOut;
        OilHoursPerDay = oilHoursPerDay;
        calendarDays = [.. points.Select(point => (point.At - origin).TotalDays)];
        axisDays = oilHoursPerDay is { } duty ? OnDuty(duty) : calendarDays;
    }

    /// <summary>The measurand.</summary>
    public Measurand Measurand { get; }

    /// <summary>Where the time axis starts.</summary>
    public DateTimeOffset Origin { get; }

    /// <summary>The readings, in order of time.</summary>
    public IReadOnlyList<SeriesPoint> Points { get; }

    /// <summary>Readings kept out of the series, each with its reason.</summary>
    public IReadOnlyList<SeriesPoint> LeftOut { get; }

    /// <summary>Whether the time axis counts oil hours, shown as days at the mean duty of the series; calendar days otherwise.</summary>
    public bool IsOverOilHours => OilHoursPerDay is not null;

    /// <summary>Mean duty over the series in oil hours per day; null on the calendar axis.</summary>
    public double? OilHoursPerDay { get; }

    /// <summary>Days on the series' axis from the origin to a moment.</summary>
    /// <remarks>
    /// On the calendar axis these are calendar days. On oil hours they are days at the mean duty: the last reading keeps its calendar day,
    /// so that later dates mean 'if the mean duty goes on'; between readings the axis is interpolated.
    /// </remarks>
    /// <param name="at">The moment.</param>
    /// <returns>Days, negative before the origin.</returns>
    public double DaysAt(DateTimeOffset at)
    {
        var day = (at - Origin).TotalDays;
        if (OilHoursPerDay is null)
        {
            return day;
        }

        var last = calendarDays.Length - 1;
        if (day <= calendarDays[0] || day >= calendarDays[last])
        {
            var end = day <= calendarDays[0] ? 0 : last;
            return axisDays[end] + day - calendarDays[end];
        }

        var after = Array.FindIndex(calendarDays, one => one >= day);
        var span = calendarDays[after] - calendarDays[after - 1];
        var part = span > 0 ? (day - calendarDays[after - 1]) / span : 1;
        return axisDays[after - 1] + part * (axisDays[after] - axisDays[after - 1]);
    }

    /// <summary>The readings that are values, as two columns of equal length.</summary>
    /// <returns>Days from the origin on the series' axis, ascending, and values in the measurand's unit.</returns>
    public (double[] Days, double[] Values) ToColumns()
    {
        var measured = Enumerable.Range(0, Points.Count).Where(i => !Points[i].Reading.IsCensored).ToList();
        return ([.. measured.Select(i => axisDays[i])], [.. measured.Select(i => Points[i].Reading.Value)]);
    }

    /// <summary>The same readings over oil hours: what wears with running must not be judged by the calendar of a peaking plant.</summary>
    /// <remarks>
    /// Position of a reading = day of the last reading − (its oil hours before the last) / mean duty. Readings without oil hours are left
    /// out, visibly.
    /// </remarks>
    /// <param name="onOilHours">The series over oil hours, or null.</param>
    /// <returns>False when fewer than two readings have oil hours, when none passed between them, or when the meter ran backwards.</returns>
    public bool TryOnOilHours([NotNullWhen(true)] out MeasurandSeries? onOilHours)
    {
        onOilHours = null;
        var metered = Points.Where(point => point.OilHours is not null).ToList();
        if (
            metered.Count < 2
            || metered.Zip(metered.Skip(1), (one, next) => next.OilHours!.Value < one.OilHours!.Value).Any(back => back)
        )
        {
            return false;
        }

        var first = metered[0];
        var last = metered[metered.Count - 1];
        var days = (last.At - first.At).TotalDays;
        var hours = last.OilHours!.Value - first.OilHours!.Value;
        if (!(days > 0 && hours > 0))
        {
            return false;
        }

        var without = Points
            .Where(point => point.OilHours is null)
            .Select(point => point.LeftOutBecause(LeftOutReason.NoOilHours));
        onOilHours = new MeasurandSeries(Measurand, Origin, metered, [.. LeftOut, .. without], hours / days);
        return true;
    }

    /// <summary>
    /// The same readings with the dilution by top-ups taken out, so that their slope is what the machine does to the oil; this series where
    /// there is nothing to correct or where it cannot be done. See docs/limits.md for the rule.
    /// </summary>
    /// <param name="history">The records with the top-ups, the volume of the oil fill and the new oil's values.</param>
    /// <param name="asOf">Now: later top-ups are not looked at.</param>
    /// <returns>The corrected series; each point keeps what was reported.</returns>
    public MeasurandSeries WithoutTopUps(OilHistory history, DateTimeOffset asOf) =>
        TopUpCorrection.Of(this, history, asOf).Series;

    internal MeasurandSeries WithPoints(IReadOnlyList<SeriesPoint> points) =>
        new(Measurand, Origin, points, LeftOut, OilHoursPerDay);

    /// <summary>Sets points of this series aside; on oil hours the axis stays as it was.</summary>
    internal MeasurandSeries Without(IReadOnlyDictionary<SeriesPoint, LeftOutReason> setAside)
    {
        return new MeasurandSeries(
            Measurand,
            Origin,
            [.. Points.Where(point => !setAside.ContainsKey(point))],
            [.. LeftOut, .. setAside.Select(pair => pair.Key.LeftOutBecause(pair.Value))],
            OilHoursPerDay
        );
    }

    private double[] OnDuty(double oilHoursPerDay)
    {
        var last = Points[Points.Count - 1];
        var lastDay = calendarDays[calendarDays.Length - 1];
        return [.. Points.Select(point => lastDay - (last.OilHours!.Value - point.OilHours!.Value) / oilHoursPerDay)];
    }

    /// <summary>What, how many readings, and over which span.</summary>
    /// <returns>For example <c>acid number: 13 readings from 2025-01-06 to 2026-01-01, 1 left out</c>.</returns>
    public override string ToString() =>
        Points.Count == 0
            ? $"{Measurand.Name}: no readings, {LeftOut.Count} left out"
            : $"{Measurand.Name}: {Points.Count} readings from {PlainText.Date(Points[0].At)} to "
                + $"{PlainText.Date(Points[Points.Count - 1].At)}{(IsOverOilHours ? " over oil hours" : "")}, {LeftOut.Count} left out";
}
