using System.Globalization;

namespace OilCondition.Charts.Drawing;

/// <summary>Moments as days since 1900 at one offset from UTC, which its label states.</summary>
internal sealed class TimeAxis : Axis
{
    private static readonly DateTime Zero = new(1900, 1, 1);

    private static readonly double[] HourSteps = [1 / 60.0, 1 / 12.0, 0.25, 0.5, 1, 2, 3, 6, 12];
    private static readonly int[] DaySteps = [1, 2, 7, 14];
    private static readonly int[] MonthSteps = [1, 2, 3, 6, 12, 24, 60, 120, 240];

    private readonly Sentences sentences;
    private readonly TimeSpan offset;

    public TimeAxis(DateTimeOffset from, DateTimeOffset to, TimeSpan offset, ChartTexts texts)
        : base(texts.Say("axis.date", ("offset", Written(offset))), Days(from, offset), Days(to, offset))
    {
        sentences = texts.Sentences;
        this.offset = offset;
    }

    public static double Days(DateTimeOffset at, TimeSpan offset) => (at.UtcDateTime + offset - Zero).TotalDays;

    public double Days(DateTimeOffset at) => Days(at, offset);

    public override IReadOnlyList<Tick> Ticks(int most)
    {
        var span = To - From;
        foreach (var hours in HourSteps)
        {
            // The words of hours are shorter than dates, so that more of them find room.
            if (span * 24 / hours <= most)
            {
                return Hours(hours / 24);
            }
        }

        foreach (var days in DaySteps)
        {
            if (span / days <= most)
            {
                return [.. Whole(days).Select(day => new Tick(Place(day), sentences.Date(At(day))))];
            }
        }

        foreach (var months in MonthSteps)
        {
            if (span / 30.4 / months <= most)
            {
                return Months(months);
            }
        }

        return Months(MonthSteps[MonthSteps.Length - 1]);
    }

    /// <summary>A place as a moment that prints the day and the hour of the axis.</summary>
    private static DateTimeOffset At(double days) => new(Zero.AddDays(days), TimeSpan.Zero);

    private static string Written(TimeSpan offset) =>
        (offset < TimeSpan.Zero ? "-" : "+") + offset.ToString(@"hh\:mm", CultureInfo.InvariantCulture);

    private IEnumerable<double> Whole(double step)
    {
        for (var i = Math.Ceiling(From / step - 1e-9); i * step <= To; i++)
        {
            yield return i * step;
        }
    }

    private List<Tick> Hours(double step)
    {
        var ticks = new List<Tick>();
        var last = default(DateTime);
        foreach (var place in Whole(step))
        {
            // To the second, so that sums of steps print the minute that they are.
            var at = new DateTimeOffset(
                (long)Math.Round((double)At(place).Ticks / TimeSpan.TicksPerSecond) * TimeSpan.TicksPerSecond,
                TimeSpan.Zero
            );
            ticks.Add(new Tick(Place(place), at.Date == last ? sentences.TimeOfDay(at) : sentences.Time(at)));
            last = at.Date;
        }

        return ticks;
    }

    private List<Tick> Months(int step)
    {
        var ticks = new List<Tick>();
        var first = At(From);
        var month = (first.Year * 12 + first.Month - 1) / step * step;
        for (; ; month += step)
        {
            var at = new DateTimeOffset(month / 12, month % 12 + 1, 1, 0, 0, 0, TimeSpan.Zero);
            var place = Days(at, TimeSpan.Zero);
            if (place > To)
            {
                return ticks;
            }

            if (place >= From)
            {
                ticks.Add(
                    new Tick(
                        Place(place),
                        step % 12 == 0 ? at.ToString("yyyy", CultureInfo.InvariantCulture) : sentences.Month(at)
                    )
                );
            }
        }
    }
}
