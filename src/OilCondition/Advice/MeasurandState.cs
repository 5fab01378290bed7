using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Where one measurand stands: its readings, its trend and its remaining life once, and every limit that is set for it.</summary>
/// <remarks>
/// A limit that says nothing new, because it is there twice or looser than another one, changes neither <see cref="Worst"/> nor
/// <see cref="Lives"/>.
/// </remarks>
public sealed class MeasurandState
{
    private readonly IPointSource? latest;

    internal MeasurandState(
        Measurand measurand,
        IPointSource? latest,
        IReadOnlyList<LimitEvaluation> limits,
        TopUpCorrection topUps,
        SeriesTrend trend,
        IReadOnlyList<RemainingLife> lives
    )
    {
        Measurand = measurand;
        this.latest = latest;
        Limits = limits;
        WorstOfEachCode = LimitRank.WorstOfEachCode(limits);
        Worst = LimitRank.Worst(WorstOfEachCode);
        TopUps = topUps.Outcome;
        BoundedByTopUps = topUps.Bounded.Count;
        Trend = trend;
        Lives = lives;
    }

    /// <summary>The measurand.</summary>
    public Measurand Measurand { get; }

    /// <summary>The latest reading of this charge; null when there is none.</summary>
    public SeriesPoint? Latest => latest?.PointOf(Measurand);

    /// <summary>The readings of the charge compared with each limit of this measurand, in the order of the limit set; at least one.</summary>
    public IReadOnlyList<LimitEvaluation> Limits { get; }

    /// <summary>
    /// The comparison that asks for most: alarm before alert before what waits for confirmation; of two that ask for the same the
    /// one whose figure was passed by more.
    /// </summary>
    public LimitEvaluation Worst { get; }

    /// <summary>Whether top-ups were corrected in the readings of the trend, and why not.</summary>
    internal TopUpOutcome TopUps { get; }

    /// <summary>How many of these readings top-ups leave as bounds.</summary>
    internal int BoundedByTopUps { get; }

    /// <summary>
    /// Whether the laboratory readings since the oil change or the last treatment move, and which of them were set aside; top-ups are
    /// corrected where that can be done.
    /// </summary>
    public SeriesTrend Trend { get; }

    /// <summary>
    /// Remaining life, from the readings that the trend judged, on each side that is limited by a fixed figure: to the strictest alarm figure
    /// of all limits, or to the strictest alert figure where none has an alarm. Empty while a treatment of this measurand is under way.
    /// </summary>
    public IReadOnlyList<RemainingLife> Lives { get; }

    /// <summary>The worst comparison with a level, with a rate of change, with the machine's own history: each is a finding of its own.</summary>
    internal IReadOnlyList<LimitEvaluation> WorstOfEachCode { get; }

    /// <summary>The limit that a life runs to.</summary>
    internal Limit LimitOf(RemainingLife life) =>
        Limits
            .First(one =>
            {
                var band = life.Side == LimitSide.Upper ? one.Upper : one.Lower;
                return LimitRank.IsFixed(one.Limit) && (band?.Alarm == life.Limit || band?.Alert == life.Limit);
            })
            .Limit;

    /// <summary>Whether a life runs to an alarm figure, and not to an alert figure because there is no other.</summary>
    internal bool RunsToAlarm(RemainingLife life) =>
        Limits.Any(one =>
            LimitRank.IsFixed(one.Limit) && (life.Side == LimitSide.Upper ? one.Upper : one.Lower)?.Alarm == life.Limit
        );

    /// <summary>Reading, state, trend and lives.</summary>
    /// <returns>For example <c>acid number 0.32 mgKOH/g: alert; rising, 0.02 mgKOH/g per 30 days (13 readings)</c>.</returns>
    public override string ToString() =>
        $"{Measurand.Name} {(Latest is { } latest ? Measurand.Text(latest.Reading) : "without a reading")}: "
        + (
            Worst.State == LimitState.NotDetermined
                ? $"not determined ({Sentences.English.Of(Worst.Reason)})"
                : PlainText.Spaced(Worst.State)
        )
        + Sentences.English.Missing(Limits)
        + $"; {Sentences.English.Of(this)}"
        + string.Concat(Lives.Select(life => $"; {Sentences.English.Of(this, life)}"));
}
