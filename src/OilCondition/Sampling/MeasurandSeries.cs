using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>One measurand on one time axis, in order of time. Censored readings stay censored.</summary>
public sealed class MeasurandSeries
{
    /// <summary>Days of the readings on the axis of oil hours; null on the calendar's, whose days the readings tell themselves.</summary>
    private readonly double[]? dutyDays;

    private readonly SeriesPoints points;

    /// <summary>Not a number until somebody asks: trend and forecast both do.</summary>
    private double readingError = double.NaN;

    internal MeasurandSeries(
        Measurand measurand,
        DateTimeOffset origin,
        IPointSource[] sources,
        IReadOnlyList<SeriesPoint> leftOut,
        double? oilHoursPerDay = null
    )
    {
        Measurand = measurand;
        Origin = origin;
        points = new SeriesPoints(measurand, sources);
        LeftOut = leftOut;
        OilHoursPerDay = oilHoursPerDay;
        dutyDays = oilHoursPerDay is { } duty ? OnDuty(duty) : null;
    }

    /// <summary>A series from columns, as a data table has them.</summary>
    /// <remarks>
    /// Rows may come in any order and are put in order of time. Values outside the measurand's plausible range are left out, visibly, with
    /// <see cref="LeftOutReason.Implausible"/>. The axis starts at the first reading; the sample number of a point is its row.
    /// </remarks>
    /// <param name="measurand">The measurand, in whose unit the values are.</param>
    /// <param name="dates">When samples were taken; n moments in the years 1900 to 2199.</param>
    /// <param name="values">What was read; n values, for a bound the figure after its sign.</param>
    /// <param name="qualifiers">How each value is to be read; n of them, or null where all are plain values.</param>
    /// <returns>The series.</returns>
    /// <exception cref="ArgumentException">The columns differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite, or a moment lies outside its range; the message names the row, from 0.</exception>
    /// <example>
    /// <code>
    /// var series = MeasurandSeries.FromColumns(Measurands.AcidNumber, dates, [0.08, 0.09, 0.11]);
    /// var life = LifeForecast.Of(series, 0.3, LimitSide.Upper, asOf);
    /// </code>
    /// </example>
    public static MeasurandSeries FromColumns(
        Measurand measurand,
        IReadOnlyList<DateTimeOffset> dates,
        IReadOnlyList<double> values,
        IReadOnlyList<Qualifier>? qualifiers = null
    )
    {
        Guard.NotNull(measurand);
        Guard.SameLength(Guard.NotNull(values).Count, Guard.NotNull(dates).Count, nameof(values), nameof(dates));
        if (qualifiers is not null)
        {
            Guard.SameLength(qualifiers.Count, dates.Count, nameof(qualifiers), nameof(dates));
        }

        var plausible = new List<SeriesPoint>(dates.Count);
        var leftOut = new List<SeriesPoint>();
        foreach (var row in Enumerable.Range(0, dates.Count).OrderBy(row => dates[row]))
        {
            Guard.Moment(dates[row], $"dates[{row}]");
            Guard.Finite(values[row], measurand.Unit, $"values[{row}]");
            var point = new SeriesPoint(
                new PointOrigin(dates[row], $"row {row}"),
                new Reading(values[row], qualifiers?[row] ?? Qualifier.None)
            );
            if (measurand.IsPlausible(values[row]))
            {
                plausible.Add(point);
            }
            else
            {
                leftOut.Add(point.LeftOutBecause(LeftOutReason.Implausible));
            }
        }

        var first =
            plausible.Count > 0 ? plausible[0].At
            : dates.Count > 0 ? dates.Min()
            : default;
        return new MeasurandSeries(measurand, first, [.. plausible], leftOut);
    }

    /// <summary>The measurand.</summary>
    public Measurand Measurand { get; }

    /// <summary>Where the time axis starts.</summary>
    public DateTimeOffset Origin { get; }

    /// <summary>The readings, in order of time.</summary>
    public IReadOnlyList<SeriesPoint> Points => points;

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
        var day = CalendarDay(at);
        if (dutyDays is null)
        {
            return day;
        }

        var last = points.Count - 1;
        if (day <= CalendarDayOf(0) || day >= CalendarDayOf(last))
        {
            var end = day <= CalendarDayOf(0) ? 0 : last;
            return dutyDays[end] + day - CalendarDayOf(end);
        }

        var after = 0;
        while (CalendarDayOf(after) < day)
        {
            after++;
        }

        var from = CalendarDayOf(after - 1);
        var span = CalendarDayOf(after) - from;
        var part = span > 0 ? (day - from) / span : 1;
        return dutyDays[after - 1] + part * (dutyDays[after] - dutyDays[after - 1]);
    }

    /// <summary>The readings that are values, as two columns of equal length.</summary>
    /// <returns>Days from the origin on the series' axis, ascending, and values in the measurand's unit.</returns>
    public (double[] Days, double[] Values) ToColumns()
    {
        var (days, values) = (new double[points.Count], new double[points.Count]);
        var count = 0;
        for (var i = 0; i < points.Count; i++)
        {
            if (ReadingOf(i) is { IsCensored: false } reading)
            {
                (days[count], values[count]) = (DayOf(i), reading.Value);
                count++;
            }
        }

        Array.Resize(ref days, count);
        Array.Resize(ref values, count);
        return (days, values);
    }

    /// <summary>A reading of the series.</summary>
    internal Reading ReadingOf(int index) => points.Sources[index].ReadingOf(Measurand);

    /// <summary>When it was read.</summary>
    internal DateTimeOffset MomentOf(int index) => points.Sources[index].Origin.At;

    /// <summary>Day of a reading on the series' axis.</summary>
    internal double DayOf(int index) => dutyDays is null ? CalendarDayOf(index) : dutyDays[index];

    private double CalendarDayOf(int index) => CalendarDay(MomentOf(index));

    private double CalendarDay(DateTimeOffset at) => (at - Origin).TotalDays;

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
        var metered = Array.FindAll(points.Sources, one => one.Origin.OilHours is not null);
        if (
            metered.Length < 2
            || metered
                .Zip(metered.Skip(1), (one, next) => next.Origin.OilHours!.Value < one.Origin.OilHours!.Value)
                .Any(back => back)
        )
        {
            return false;
        }

        var (first, last) = (metered[0].Origin, metered[metered.Length - 1].Origin);
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

    /// <summary>
    /// The least standard deviation that one reading has, on the measurand's scale, at the median of the readings: by its test method, where the precision is known, and by
    /// its last digit, where readings repeat one another so often that it hides their scatter. Two results differ by less than 2.8 standard deviations in 95 of 100 cases (ISO 5725-6, from memory); a last digit of r hides r/sqrt(12).
    /// </summary>
    internal double ReadingError
    {
        get
        {
            if (double.IsNaN(Volatile.Read(ref readingError)))
            {
                Volatile.Write(ref readingError, FindReadingError());
            }

            return Volatile.Read(ref readingError);
        }
    }

    private double FindReadingError()
    {
        var (_, values) = ToColumns();
        if (values.Length == 0)
        {
            return 0;
        }

        var typical = Math.Abs(Statistics.Numbers.Median(values));
        var method = Math.Max(Measurand.AbsolutePrecision, Measurand.RelativePrecision * typical) / 2.8;
        var repeats = 2 * Statistics.Numbers.CountDistinct(values) <= values.Length;
        var error = repeats ? Math.Max(method, Statistics.Numbers.LastDigit(values) / Math.Sqrt(12)) : method;
        return Measurand.Scale == NaturalScale.Linear ? error
            : typical > 0 ? Math.Min(1, error / typical)
            : 0;
    }

    /// <summary>Where the points come from.</summary>
    internal IPointSource[] Sources => points.Sources;

    internal MeasurandSeries WithPoints(IPointSource[] sources) =>
        new(Measurand, Origin, sources, LeftOut, OilHoursPerDay);

    /// <summary>Sets points of this series aside, by their index in order of time; on oil hours the axis stays as it was.</summary>
    internal MeasurandSeries Without(IReadOnlyDictionary<int, LeftOutReason> setAside) =>
        new(
            Measurand,
            Origin,
            [.. points.Sources.Where((_, i) => !setAside.ContainsKey(i))],
            [.. LeftOut, .. setAside.Select(pair => points[pair.Key].LeftOutBecause(pair.Value))],
            OilHoursPerDay
        );

    private double[] OnDuty(double oilHoursPerDay)
    {
        var last = points.Sources[points.Count - 1].Origin;
        var lastDay = CalendarDay(last.At);
        return Array.ConvertAll(
            points.Sources,
            one => lastDay - (last.OilHours!.Value - one.Origin.OilHours!.Value) / oilHoursPerDay
        );
    }

    /// <summary>What, how many readings, and over which span.</summary>
    /// <returns>For example <c>acid number: 13 readings from 2025-01-06 to 2026-01-01, 1 left out</c>.</returns>
    public override string ToString() =>
        Points.Count == 0
            ? $"{Measurand.Name}: no readings, {LeftOut.Count} left out"
            : $"{Measurand.Name}: {Points.Count} readings from {PlainText.Date(Points[0].At)} to "
                + $"{PlainText.Date(Points[Points.Count - 1].At)}{(IsOverOilHours ? " over oil hours" : "")}, {LeftOut.Count} left out";
}
