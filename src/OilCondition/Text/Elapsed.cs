namespace OilCondition.Text;

/// <summary>
/// Time spans from figures, to the tick on every framework: <see cref="TimeSpan.FromHours(double)"/> rounds to the millisecond on .NET
/// Framework. What is longer than a span of time can be, some 29,000 years, reads as the longest one.
/// </summary>
internal static class Elapsed
{
    public static TimeSpan FromDays(double days) => Of(days, TimeSpan.TicksPerDay);

    public static TimeSpan FromHours(double hours) => Of(hours, TimeSpan.TicksPerHour);

    public static TimeSpan FromMinutes(double minutes) => Of(minutes, TimeSpan.TicksPerMinute);

    public static TimeSpan FromSeconds(double seconds) => Of(seconds, TimeSpan.TicksPerSecond);

    private static TimeSpan Of(double figure, long ticks)
    {
        var exact = Math.Round(Guard.Finite(figure, "") * ticks);
        return exact >= long.MaxValue ? TimeSpan.MaxValue
            : exact <= long.MinValue ? TimeSpan.MinValue
            : TimeSpan.FromTicks((long)exact);
    }
}
