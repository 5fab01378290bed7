namespace OilCondition.Planning;

/// <summary>
/// Whole steps from the moment of the plan on, itself rounded up to a step of the clock. Rounding never promises too much: lengths and earliest starts go
/// up, due dates and latest ends down, windows shrink, unavailable hours grow.
/// </summary>
internal sealed class TimeGrid
{
    private readonly TimeSpan offset;
    private readonly long step;
    private readonly long origin;

    public TimeGrid(DateTimeOffset asOf, TimeSpan step)
    {
        offset = asOf.Offset;
        this.step = step.Ticks;
        origin = DivideUp(asOf.UtcTicks, this.step) * this.step;
    }

    public double StepHours => TimeSpan.FromTicks(step).TotalHours;

    public long Up(DateTimeOffset at) => DivideUp(at.UtcTicks - origin, step);

    public long Down(DateTimeOffset at) => -DivideUp(origin - at.UtcTicks, step);

    public long Length(TimeSpan span) => DivideUp(span.Ticks, step);

    public DateTimeOffset Moment(long at) => new DateTimeOffset(origin + at * step, TimeSpan.Zero).ToOffset(offset);

    public TimeSpan Span(long steps) => TimeSpan.FromTicks(steps * step);

    private static long DivideUp(long value, long by) => value >= 0 ? (value + by - 1) / by : -(-value / by);
}
