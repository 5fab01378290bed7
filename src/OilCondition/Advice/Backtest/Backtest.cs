using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>
/// Replays a plant's own past, each day as if it were today, and says how good alerts and forecasts would have been.
/// </summary>
/// <remarks>
/// No day sees a record that is later than itself. What came after is judged with everything known at the end of the range. A sample counts as known
/// when it was taken. See docs/backtest.md for what each figure means.
/// </remarks>
/// <example>
/// <code>
/// var backtest = Backtest.Of(histories, limits, new BacktestOptions(from, to));
/// Console.WriteLine(backtest);
/// foreach (var crossing in backtest.Crossings.Where(one => one.IsSilent))
/// {
///     Console.WriteLine(crossing);
/// }
/// </code>
/// </example>
public sealed partial class Backtest
{
    private Backtest(BacktestOptions options, IReadOnlyList<MachineReplay> replays)
    {
        Options = options;
        MachineCount = replays.Count;
        NotReplayed = [.. replays.Where(one => one.Days.Count == 0).Select(one => one.MachineId)];
        DayCount = replays.Sum(one => one.Days.Count);
        MachineYears = DayCount * options.Step.TotalDays / 365.25;
        Alerts = [.. replays.SelectMany(one => one.Alerts)];
        Crossings = [.. replays.SelectMany(one => one.Crossings)];
        var episodes = replays.SelectMany(one => one.Episodes).ToList();
        Total = BacktestFigures.Of("all", this, Alerts, Crossings, episodes);
        Subjects =
        [
            .. Alerts
                .Select(one => one.Subject)
                .Concat(episodes.Select(one => one.Subject))
                .Distinct(StringComparer.Ordinal)
                .OrderBy(subject => subject, StringComparer.Ordinal)
                .Select(subject =>
                    BacktestFigures.Of(
                        subject,
                        this,
                        Alerts.Where(one => one.Subject == subject),
                        Crossings.Where(one => one.Subject == subject),
                        episodes.Where(one => one.Subject == subject)
                    )
                ),
        ];
    }

    /// <summary>Which days were replayed, and what counts as confirmed.</summary>
    public BacktestOptions Options { get; }

    /// <summary>Machines that were given.</summary>
    public int MachineCount { get; }

    /// <summary>Ids of machines without a record in the range: no day of them was replayed.</summary>
    public IReadOnlyList<string> NotReplayed { get; }

    /// <summary>Days that were replayed, over all machines.</summary>
    public int DayCount { get; }

    /// <summary>What these days stand for: their number times the step, in years of 365.25 days.</summary>
    public double MachineYears { get; }

    /// <summary>Everything together.</summary>
    public BacktestFigures Total { get; }

    /// <summary>The same for each subject of problems, in the order of their names.</summary>
    public IReadOnlyList<BacktestFigures> Subjects { get; }

    /// <summary>Each alert that was raised, by machine and time.</summary>
    public IReadOnlyList<RaisedAlert> Alerts { get; }

    /// <summary>Each limit that was crossed, by machine and time.</summary>
    public IReadOnlyList<Crossing> Crossings { get; }

    /// <summary>Replays machines that have the same limits.</summary>
    /// <param name="histories">The machines' records, in any order; each machine once.</param>
    /// <param name="limits">The limits.</param>
    /// <param name="options">Which days, and what counts as confirmed.</param>
    /// <param name="progress">Told after each day how much is done, up to 100 %; null for nobody.</param>
    /// <param name="cancellationToken">Stops the work before the next day.</param>
    /// <returns>What was found; of no machines, or of none with records in the range, every count is 0 and no share is determined.</returns>
    /// <exception cref="ArgumentException">A machine is there twice, or the options of a day are not of that day.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Backtest Of(
        IEnumerable<OilHistory> histories,
        LimitSet limits,
        BacktestOptions options,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        Guard.NotNull(limits);
        return Of(histories, _ => limits, options, progress, cancellationToken);
    }

    /// <summary>Replays machines that have limits of their own.</summary>
    /// <param name="histories">The machines' records, in any order; each machine once.</param>
    /// <param name="limits">The limits of a machine.</param>
    /// <param name="options">Which days, and what counts as confirmed.</param>
    /// <param name="progress">Told after each day how much is done, up to 100 %; null for nobody.</param>
    /// <param name="cancellationToken">Stops the work before the next day.</param>
    /// <returns>What was found; of no machines, or of none with records in the range, every count is 0 and no share is determined.</returns>
    /// <exception cref="ArgumentException">A machine is there twice, or the options of a day are not of that day.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Backtest Of(
        IEnumerable<OilHistory> histories,
        Func<Machine, LimitSet> limits,
        BacktestOptions options,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        Guard.NotNull(limits);
        Guard.NotNull(options);
        var replays = Guard
            .NotNull(histories)
            .Select(history => new MachineReplay(
                Guard.NotNull(history),
                Guard.NotNull(limits(history.Machine)),
                options
            ))
            .OrderBy(replay => replay.MachineId, StringComparer.Ordinal)
            .ToList();
        for (var i = 1; i < replays.Count; i++)
        {
            if (replays[i].MachineId == replays[i - 1].MachineId)
            {
                throw new ArgumentException(
                    $"The machine '{replays[i].MachineId}' is there twice; each machine has one history.",
                    nameof(histories)
                );
            }
        }

        var count = replays.Sum(replay => replay.Days.Count);
        var done = 0;
        foreach (var replay in replays)
        {
            replay.Run(() => progress?.Report(Ratio.FromDecimalFractions((double)++done / count)), cancellationToken);
        }

        return new Backtest(options, replays);
    }

    /// <summary>Everything as tables of plain text, a line a subject.</summary>
    /// <returns>Several lines.</returns>
    public override string ToString() => BacktestTable.Of(this);
}
