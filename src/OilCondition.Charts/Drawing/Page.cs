namespace OilCondition.Charts.Drawing;

/// <summary>What the charts say alike: machines, dates, arrivals.</summary>
/// <param name="texts">Words.</param>
/// <param name="offset">Offset of all dates.</param>
internal sealed class Page(ChartTexts texts, TimeSpan offset)
{
    public ChartTexts Texts { get; } = texts;

    public Sentences Sentences { get; } = texts.Sentences;

    public static Page Of(ChartOptions options, DateTimeOffset now) =>
        new(options.Texts, options.UtcOffset ?? now.Offset);

    public string Day(DateTimeOffset at) => Sentences.Date(at.ToOffset(offset));

    public string Minute(DateTimeOffset at) => Sentences.Time(at.ToOffset(offset));

    public static string Machine(Machine machine) => $"{machine.Id} {machine.Name}";

    public double Days(DateTimeOffset at) => TimeAxis.Days(at, offset);

    /// <summary>When a level is reached, as a sentence.</summary>
    public string Arrival(Arrival<DateTimeOffset> arrival) =>
        arrival switch
        {
            Arrival<DateTimeOffset>.Already already => Texts.Say("arrival.reached", ("at", Minute(already.At))),
            Arrival<DateTimeOffset>.Expected expected => Texts.Say(
                "arrival.expected",
                ("at", Minute(expected.Estimate)),
                ("early", Minute(expected.Earliest)),
                ("late", Minute(expected.Latest))
            ),
            Arrival<DateTimeOffset>.NotBefore later => Texts.Say(
                "arrival.not-before",
                ("early", Minute(later.Earliest))
            ),
            Arrival<DateTimeOffset>.Never => Texts["arrival.never"],
            _ => Texts["arrival.open"],
        };

    /// <summary>A time axis over moments with a little room at its ends, an hour at least.</summary>
    public TimeAxis Time(IEnumerable<DateTimeOffset> moments)
    {
        DateTimeOffset[] all = [.. moments];
        var (from, to) = (all.Min(), all.Max());
        var least = TimeSpan.FromHours(1);
        var pad = to - from < least ? TimeSpan.FromTicks(least.Ticks / 2) : TimeSpan.FromTicks((to - from).Ticks / 40);
        return new TimeAxis(from - pad, to + pad, offset, Texts);
    }
}
