using OilCondition.Limits;

namespace OilCondition.Charts.Drawing;

/// <summary>What the charts say alike: machines, dates, states, arrivals.</summary>
/// <param name="options">Words and units.</param>
/// <param name="offset">Offset of all dates.</param>
internal sealed class Page(ChartOptions options, TimeSpan offset)
{
    public ChartTexts Texts { get; } = options.Texts;

    public ChartUnits Units { get; } = options.Units;

    public TimeSpan Offset { get; } = offset;

    public static Page Of(ChartOptions? options, DateTimeOffset now)
    {
        options ??= ChartOptions.Default;
        return new Page(options, options.UtcOffset ?? now.Offset);
    }

    public string Day(DateTimeOffset at) => Texts.Date(at.UtcDateTime + Offset);

    public string Minute(DateTimeOffset at) =>
        $"{Texts.Date(at.UtcDateTime + Offset)} {Texts.Time(at.UtcDateTime + Offset)}";

    public static string Machine(Machine machine) => $"{machine.Id} {machine.Name}";

    public double Days(DateTimeOffset at) => TimeAxis.Days(at, Offset);

    public string Reading(Shown shown, Reading reading) =>
        reading.Qualifier switch
        {
            Qualifier.LessThan => "<",
            Qualifier.GreaterThan => ">",
            Qualifier.Approximately => "≈",
            _ => "",
        } + shown.Text(Texts, reading.Value);

    public string State(LimitState state) =>
        state switch
        {
            LimitState.Normal => Texts.Say("normal"),
            LimitState.Alert => Texts.Say("alert"),
            LimitState.Alarm => Texts.Say("alarm"),
            _ => Texts.Say("not determined"),
        };

    /// <summary>When a level is reached, as a sentence.</summary>
    public string Arrival(Arrival<DateTimeOffset> arrival) =>
        arrival switch
        {
            Arrival<DateTimeOffset>.Already already => Texts.Say("Reached {0}.", Minute(already.At)),
            Arrival<DateTimeOffset>.Expected expected => Texts.Say(
                "Completion expected {0}, between {1} and {2}.",
                Minute(expected.Estimate),
                Minute(expected.Earliest),
                Minute(expected.Latest)
            ),
            Arrival<DateTimeOffset>.NotBefore later => Texts.Say("Completion not before {0}.", Minute(later.Earliest)),
            Arrival<DateTimeOffset>.Never => Texts.Say("The target is not reached on this course."),
            _ => Texts.Say("The readings do not tell yet when it is completed."),
        };

    /// <summary>A time axis over moments with a little room at its ends, an hour at least.</summary>
    public TimeAxis Time(IEnumerable<DateTimeOffset> moments)
    {
        DateTimeOffset[] all = [.. moments];
        var (from, to) = (all.Min(), all.Max());
        var least = TimeSpan.FromHours(1);
        var pad = to - from < least ? TimeSpan.FromTicks(least.Ticks / 2) : TimeSpan.FromTicks((to - from).Ticks / 40);
        return new TimeAxis(from - pad, to + pad, Offset, Texts);
    }
}
