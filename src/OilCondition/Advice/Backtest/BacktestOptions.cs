using OilCondition.Text;

namespace OilCondition;

/// <summary>Which days of a plant's past are replayed, and what counts as confirmed.</summary>
public sealed class BacktestOptions
{
    /// <summary>Options.</summary>
    /// <param name="from">The first day that is replayed; in the years 1900 to 2199.</param>
    /// <param name="to">
    /// The last moment of which anything is looked at, not before <paramref name="from"/>: later records tell neither a day nor its outcome.
    /// </param>
    /// <param name="step">Between two replayed days, 1 to 366 days. Default 30 days; not longer than the usual time between samples.</param>
    /// <param name="grace">
    /// How much later than the planning horizon a limit may be passed and still confirm an alert, 0 to 3653 days: what happens is seen at the next
    /// sample only. Default 30 days.
    /// </param>
    /// <param name="assess">
    /// How each day is assessed, for example <c>asOf => new AssessmentOptions(asOf, planningHorizon)</c>; the usual options where left out. Give it
    /// only what was known on that day.
    /// </param>
    /// <param name="confidence">Confidence of the interval beside each share, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">A value lies outside its range.</exception>
    public BacktestOptions(
        DateTimeOffset from,
        DateTimeOffset to,
        TimeSpan? step = null,
        TimeSpan? grace = null,
        Func<DateTimeOffset, AssessmentOptions>? assess = null,
        double confidence = 0.9
    )
    {
        From = Guard.Moment(from);
        To = Guard.Moment(to);
        if (to < from)
        {
            throw new ArgumentOutOfRangeException(nameof(to), $"to is {to:u}; allowed: from {from:u} on.");
        }

        Step = step ?? Elapsed.FromDays(30);
        Guard.InRange(Step.TotalDays, 1, 366, "days", nameof(step));
        Grace = grace ?? Elapsed.FromDays(30);
        Guard.InRange(Grace.TotalDays, 0, 3653, "days", nameof(grace));
        Assess = assess ?? (asOf => new AssessmentOptions(asOf));
        Confidence = Guard.OpenUnitInterval(confidence);
    }

    /// <summary>The first day that is replayed.</summary>
    public DateTimeOffset From { get; }

    /// <summary>The last moment of which anything is looked at.</summary>
    public DateTimeOffset To { get; }

    /// <summary>Between two replayed days.</summary>
    public TimeSpan Step { get; }

    /// <summary>How much later than the planning horizon a limit may be passed and still confirm an alert.</summary>
    public TimeSpan Grace { get; }

    /// <summary>How each day is assessed.</summary>
    public Func<DateTimeOffset, AssessmentOptions> Assess { get; }

    /// <summary>Confidence of the interval beside each share.</summary>
    public double Confidence { get; }

    internal AssessmentOptions At(DateTimeOffset day) =>
        Guard.NotNull(Assess(day), nameof(Assess)) is var options && options.AsOf == day
            ? options
            : throw new ArgumentException(
                $"assess gave options of {options.AsOf:u} for the day {day:u}; it must take over the day that it is given.",
                nameof(day)
            );
}
