using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>The figures of a backtest, of one subject or of all: alerts, limits crossed, forecasts.</summary>
/// <remarks>
/// Forecasts of one stretch of one measurand, between oil changes and treatments, are refits of one series: each stretch counts once, by the share of
/// its forecasts, and intervals stand on the number of stretches.
/// </remarks>
public sealed class BacktestFigures
{
    private BacktestFigures(
        string subject,
        double machineYears,
        double confidence,
        IReadOnlyList<Backtest.RaisedAlert> alerts,
        IReadOnlyList<Backtest.Crossing> crossings,
        IReadOnlyList<LimitEpisode> episodes
    )
    {
        Subject = subject;
        Raised = alerts.Count;
        RaisedPerMachineYear = machineYears > 0 ? Raised / machineYears : null;
        int Count(Backtest.AlertOutcome outcome) => alerts.Count(alert => alert.Outcome == outcome);
        NotConfirmed = Count(Backtest.AlertOutcome.NotConfirmed);
        ActedOn = Count(Backtest.AlertOutcome.ActedOn);
        Undecided = Count(Backtest.AlertOutcome.Undecided);
        NotJudged = Count(Backtest.AlertOutcome.NotJudged);
        var confirmed = Count(Backtest.AlertOutcome.Confirmed);
        Confirmed = new BacktestShare(confirmed, confirmed + NotConfirmed, confidence);

        Silent = new BacktestShare(crossings.Count(one => one.IsSilent), crossings.Count, confidence);
        MedianWarning =
            crossings.Count == 0
                ? null
                : Elapsed.FromDays(LimitEpisode.Middle(crossings.Select(one => one.Warning.TotalDays)));
        BegunBeyond = episodes.Count(one => one.BegunBeyond);

        var crossed = episodes.Where(one => one.HasCrossedForecasts).ToList();
        BacktestShare Mean(IReadOnlyList<LimitEpisode> of, Func<LimitEpisode, double> share) =>
            new(of.Sum(share), of.Count, confidence);
        Held = Mean(crossed, one => one.HeldShare);
        CrossedBefore = Mean(crossed, one => one.BeforeShare);
        CrossedAfter = Mean(crossed, one => one.AfterShare);
        var width =
            crossed.Count == 0
                ? double.PositiveInfinity
                : LimitEpisode.Middle(crossed.Select(one => one.MedianWidthDays));
        MedianWidth = Guard.IsFinite(width) ? Elapsed.FromDays(width) : null;
        IntervalScoreDays = crossed.Count == 0 ? null : crossed.Average(one => one.MeanScoreDays);

        var running = episodes.Where(one => one.IsStillRunning).ToList();
        RunningPastInterval = Mean(running, one => one.PastShare);
        RunningChance = running.Count == 0 ? null : running.Average(one => one.MeanChanceByEnd);

        var within = episodes.Where(one => one.HasHorizonForecasts).ToList();
        ForetoldWithinHorizon = within.Sum(one => one.MeanChanceWithinHorizon);
        CameWithinHorizon = Mean(within, one => one.CameWithinHorizonShare);
    }

    /// <summary>What the figures are about: a measurand's id, <c>water</c>, <c>particles</c>, or <c>all</c>.</summary>
    public string Subject { get; }

    /// <summary>Alerts raised: keys that stand on a day and did not stand on the day before.</summary>
    public int Raised { get; }

    /// <summary>Alerts raised per machine-year; null where no day was replayed.</summary>
    public double? RaisedPerMachineYear { get; }

    /// <summary>Alerts confirmed by a later reading in time, of those confirmed and not confirmed.</summary>
    public BacktestShare Confirmed { get; }

    /// <summary>Alerts whose time passed without such a reading.</summary>
    public int NotConfirmed { get; }

    /// <summary>Alerts after which the oil was changed or treated before anything could be seen.</summary>
    public int ActedOn { get; }

    /// <summary>Alerts of which the record does not tell the outcome.</summary>
    public int Undecided { get; }

    /// <summary>Alerts about records and treatments.</summary>
    public int NotJudged { get; }

    /// <summary>Limits crossed without an alert before, of those crossed.</summary>
    public BacktestShare Silent { get; }

    /// <summary>Median warning before a limit was crossed, silent crossings with none; null when none was crossed.</summary>
    public TimeSpan? MedianWarning { get; }

    /// <summary>Stretches whose first reading lay beyond the limit: nothing could be foretold, and they count as no crossing.</summary>
    public int BegunBeyond { get; }

    /// <summary>
    /// Stretches that crossed: the share of forecasts in whose 5 to 95 % interval the first reading beyond the limit came. Stated: 0.9.
    /// </summary>
    public BacktestShare Held { get; }

    /// <summary>The share of forecasts before whose interval it came: the dangerous miss. Stated: 0.05.</summary>
    public BacktestShare CrossedBefore { get; }

    /// <summary>The share of forecasts after whose interval it came. Stated: 0.05.</summary>
    public BacktestShare CrossedAfter { get; }

    /// <summary>Median over stretches of the median width of these intervals; null where there are none, or most have no latest date.</summary>
    public TimeSpan? MedianWidth { get; }

    /// <summary>
    /// Mean interval score of these intervals in days, width + 20 times the miss (Winkler 1972); smaller is better; null where there are none. An
    /// end that is not reached within 30 years counts as 30 years.
    /// </summary>
    public double? IntervalScoreDays { get; }

    /// <summary>Stretches that never crossed: the share of forecasts whose interval had passed by the last reading.</summary>
    public BacktestShare RunningPastInterval { get; }

    /// <summary>Mean chance, 0 to 1, with which these were said to have crossed by their last reading; null when there are none.</summary>
    public double? RunningChance { get; }

    /// <summary>Stretches expected to cross within the planning horizon: the sum of their mean stated chances.</summary>
    public double ForetoldWithinHorizon { get; }

    /// <summary>
    /// Stretches that did, each by the share of its days, of those with days whose whole horizon is on record. Honest chances lie, over
    /// <see cref="BacktestShare.Count"/>, in its interval.
    /// </summary>
    public BacktestShare CameWithinHorizon { get; }

    /// <summary>The figures in a line.</summary>
    /// <returns>For example <c>iron: 3 alerts, confirmed 1 of 2, 50 % (3 to 97 %); silent 1 of 2, 50 % (3 to 97 %); held none</c>.</returns>
    public override string ToString() =>
        $"{Subject}: {Raised.ToString(CultureInfo.InvariantCulture)} alerts, confirmed {Confirmed}; silent {Silent}; held {Held}";

    internal static BacktestFigures Of(
        string subject,
        Backtest backtest,
        IEnumerable<Backtest.RaisedAlert> alerts,
        IEnumerable<Backtest.Crossing> crossings,
        IEnumerable<LimitEpisode> episodes
    ) => new(subject, backtest.MachineYears, backtest.Options.Confidence, [.. alerts], [.. crossings], [.. episodes]);
}
