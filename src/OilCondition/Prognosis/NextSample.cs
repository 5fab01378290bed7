using OilCondition.Text;

namespace OilCondition.Prognosis;

/// <summary>When to take the next sample: the moment by which the chance of a limit crossed unseen reaches the accepted risk.</summary>
/// <remarks>
/// The chance counts from the last reading of each measurand, since nobody has looked since: 1 − Π (1 − Fi(t)) over the limits, taken as independent.
/// The interval counts from the latest reading of any of them and stays between the shortest and the longest of the plan.
/// </remarks>
/// <example>
/// <code>
/// var plan = new SamplingPlan(Ratio.FromPercent(5), Elapsed.FromDays(30), Elapsed.FromDays(180));
/// var next = NextSample.After(lives, lastSampleAt, plan, asOf);
/// </code>
/// </example>
public sealed record NextSample
{
    private NextSample(DateTimeOffset at, NextSampleReason reason, double chanceUnseen, DateTimeOffset asOf)
    {
        At = at;
        Reason = reason;
        ChanceUnseen = chanceUnseen;
        IsOverdue = at < asOf;
    }

    /// <summary>When it is due; before now where it is overdue.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Why then.</summary>
    public NextSampleReason Reason { get; }

    /// <summary>Chance that a limit has been crossed unseen by then; 1 where one is crossed already.</summary>
    public double ChanceUnseen { get; }

    /// <summary>Whether it was due before now.</summary>
    public bool IsOverdue { get; }

    /// <summary>The moment at which what is passed, or has changed, is looked at again.</summary>
    internal static NextSample ToConfirm(
        NextSampleReason reason,
        DateTimeOffset lastSampleAt,
        SamplingPlan plan,
        DateTimeOffset asOf
    ) => new(lastSampleAt.AddDays(plan.Shortest.TotalDays), reason, 1, asOf);

    /// <summary>The first sample of a machine of which there is none: the shortest interval after its oil went in, or now where that is not known.</summary>
    internal static NextSample First(DateTimeOffset? chargedAt, SamplingPlan plan, DateTimeOffset asOf) =>
        new(chargedAt?.AddDays(plan.Shortest.TotalDays) ?? asOf, NextSampleReason.NeverSampled, 0, asOf);

    /// <summary>Moment and reason.</summary>
    /// <returns>For example <c>2026-07-25 (risk reached, 5 % unseen)</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Date(At)} ({PlainText.Spaced(Reason)}, {PlainText.Number(100 * ChanceUnseen)} % unseen{(IsOverdue ? ", overdue" : "")})";

    /// <summary>Finds the moment.</summary>
    /// <param name="lives">Forecasts against each limit of one machine.</param>
    /// <param name="lastSampleAt">When the last sample was taken.</param>
    /// <param name="plan">Accepted risk and intervals.</param>
    /// <param name="asOf">Now; in the years 1900 to 2199.</param>
    /// <returns>The moment and why.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The last sample lies after now, or a moment outside its range.</exception>
    public static NextSample After(
        IReadOnlyList<RemainingLife> lives,
        DateTimeOffset lastSampleAt,
        SamplingPlan plan,
        DateTimeOffset asOf
    )
    {
        Guard.NotNull(lives);
        Guard.NotNull(plan);
        Guard.Moment(asOf);
        Guard.Moment(lastSampleAt);
        Guard.NotNegative((asOf - lastSampleAt).TotalDays, "d before now", nameof(lastSampleAt));
        var soonest = lastSampleAt.AddDays(plan.Shortest.TotalDays);
        var latest = lastSampleAt.AddDays(plan.Longest.TotalDays);
        if (lives.Any(life => life is RemainingLife.AlreadyCrossed))
        {
            return ToConfirm(NextSampleReason.LimitCrossed, lastSampleAt, plan, asOf);
        }

        double Unseen(DateTimeOffset at)
        {
            var intact = 1.0;
            for (var i = 0; i < lives.Count; i++)
            {
                intact *= lives[i] is RemainingLife.Forecast one ? 1 - one.Crossing.ChanceUnseenBefore(at) : 1;
            }

            return 1 - intact;
        }

        if (!lives.Any(life => life is RemainingLife.Forecast))
        {
            return lives.Count == 0
                ? new NextSample(latest, NextSampleReason.NothingToForecast, 0, asOf)
                : new NextSample(soonest, NextSampleReason.NoForecast, 0, asOf);
        }

        var risk = plan.Risk.DecimalFractions;
        if (Unseen(soonest) >= risk)
        {
            return new NextSample(soonest, NextSampleReason.ShortestInterval, Unseen(soonest), asOf);
        }

        if (Unseen(latest) < risk)
        {
            return new NextSample(latest, NextSampleReason.LongestInterval, Unseen(latest), asOf);
        }

        // Between the two, to the hour.
        var (before, after) = (0.0, (latest - soonest).TotalHours);
        while (after - before > 1)
        {
            var middle = (before + after) / 2;
            (before, after) = Unseen(soonest.AddHours(middle)) < risk ? (middle, after) : (before, middle);
        }

        var at = soonest.AddHours(after);
        return new NextSample(at, NextSampleReason.RiskReached, Unseen(at), asOf);
    }
}
