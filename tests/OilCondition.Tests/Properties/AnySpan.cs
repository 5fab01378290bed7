namespace OilCondition.Tests.Properties;

/// <summary>Spans of time from any figure: what no span can hold becomes the longest or the shortest, as does what is no number.</summary>
internal static class AnySpan
{
    public static TimeSpan Days(double days) => Of(days, TimeSpan.TicksPerDay);

    public static TimeSpan Hours(double hours) => Of(hours, TimeSpan.TicksPerHour);

    public static TimeSpan Minutes(double minutes) => Of(minutes, TimeSpan.TicksPerMinute);

    private static TimeSpan Of(double figure, long ticks) =>
        figure * ticks >= long.MaxValue ? TimeSpan.MaxValue
        : figure * ticks > long.MinValue ? TimeSpan.FromTicks((long)(figure * ticks))
        : TimeSpan.MinValue;
}
