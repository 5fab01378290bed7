using OilCondition.Prognosis;

namespace OilCondition;

/// <summary>The days of one machine, replayed one after another.</summary>
internal sealed class MachineReplay
{
    private readonly OilHistory known;
    private readonly LimitSet limits;
    private readonly BacktestOptions options;

    public MachineReplay(OilHistory history, LimitSet limits, BacktestOptions options)
    {
        known = history.Until(options.To);
        this.limits = limits;
        this.options = options;
        MachineId = history.Machine.Id;
        Days = [.. ReplayedDays()];
    }

    public string MachineId { get; }

    public IReadOnlyList<DateTimeOffset> Days { get; }

    public IReadOnlyList<Backtest.RaisedAlert> Alerts { get; private set; } = [];

    public IReadOnlyList<Backtest.Crossing> Crossings { get; private set; } = [];

    /// <summary>The stretches of each limited measurand that began or were crossed within the replayed days, or of which a forecast was made.</summary>
    public IReadOnlyList<LimitEpisode> Episodes { get; private set; } = [];

    public void Run(Action afterDay, CancellationToken cancellationToken)
    {
        if (Days.Count == 0)
        {
            return;
        }

        var came = new OilEpisodes(known, options.To);
        var outcomes = new AlertOutcomes(known.Machine, limits, came);
        var episodes = LimitEpisodes(came);
        var standing = new List<(DateTimeOffset Day, IReadOnlyList<Alert> Alerts)>();
        var alerts = new List<Backtest.RaisedAlert>();
        var keys = KeysBefore(Days[0], cancellationToken);
        foreach (var day in Days)
        {
            cancellationToken.ThrowIfCancellationRequested();
            var assessment = ConditionAssessor.Assess(known.Until(day), limits, options.At(day));
            var window = assessment.Options.PlanningHorizon + options.Grace;
            alerts.AddRange(
                assessment
                    .Alerts.Where(alert => !keys.Contains(alert.Key))
                    .Select(alert => outcomes.Of(alert, day, day + window))
            );
            keys = KeysOf(assessment);
            standing.Add((day, [.. assessment.Alerts.Where(AlertOutcomes.IsAboutOil)]));
            foreach (var life in assessment.States.SelectMany(state => state.Lives).OfType<RemainingLife.Forecast>())
            {
                if (
                    came.StretchAt(life.Series.Measurand, day) is { } stretch
                    && episodes.TryGetValue((life.Series.Measurand, life.Side, stretch), out var episode)
                )
                {
                    episode.Take(life.Crossing, day, day + assessment.Options.PlanningHorizon);
                }
            }

            afterDay();
        }

        Alerts = alerts;
        Episodes = [.. episodes.Values.Where(IsInRange)];
        Crossings =
        [
            .. Episodes
                .Where(one => one.Crossing is not null)
                .OrderBy(one => one.Crossing!.At)
                .Select(one => Crossed(one, came, standing)),
        ];
    }

    /// <summary>From the first record to the day that first sees the last one: a machine that is gone raises nothing.</summary>
    private IEnumerable<DateTimeOffset> ReplayedDays()
    {
        if (!known.TryFirstRecord(out var first))
        {
            yield break;
        }

        var last = known
            .Samples.Select(sample => sample.TakenAt)
            .Concat(known.SensorReadings.Select(row => row.At))
            .Max();
        for (var day = options.From; day <= options.To && day - options.Step < last; day += options.Step)
        {
            if (day >= first)
            {
                yield return day;
            }
        }
    }

    /// <summary>A crossing that came before the first replayed day could not be foretold on any of them.</summary>
    private bool IsInRange(LimitEpisode episode) =>
        episode.Crossing is { } crossing ? crossing.At > Days[0] : !episode.BegunBeyond || episode.Begin.At >= Days[0];

    /// <summary>What stood already one step before the first day is not raised on it.</summary>
    private HashSet<string> KeysBefore(DateTimeOffset firstDay, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var day = firstDay - options.Step;
        return known.TryFirstRecord(out var first) && first <= day
            ? KeysOf(ConditionAssessor.Assess(known.Until(day), limits, options.At(day)))
            : [];
    }

    private static HashSet<string> KeysOf(ConditionAssessment assessment) =>
        new(assessment.Alerts.Select(alert => alert.Key), StringComparer.Ordinal);

    private Dictionary<(Measurand, LimitSide, (int, int)), LimitEpisode> LimitEpisodes(OilEpisodes came)
    {
        var episodes = new Dictionary<(Measurand, LimitSide, (int, int)), LimitEpisode>();
        foreach (var measurand in limits.Limits.Select(limit => limit.Measurand).Distinct())
        {
            var figures = new FixedFigures(known.Machine.Oil, measurand, limits.Limits);
            var readings = came.Readings(measurand);
            var stretches = readings.GroupBy(point => came.StretchAt(measurand, point.At)).ToList();
            foreach (var side in FixedFigures.Sides)
            {
                if (figures.Last(side) is not { } limit)
                {
                    continue;
                }

                foreach (var stretch in stretches)
                {
                    if (stretch.Key is { } key)
                    {
                        var last = readings[readings.Count - 1].At;
                        episodes[(measurand, side, key)] = new(measurand, side, limit, [.. stretch], last);
                    }
                }
            }
        }

        return episodes;
    }

    /// <summary>With the replayed days of this stretch, up to the last one before the crossing, on all of which an alert of the subject stood.</summary>
    private Backtest.Crossing Crossed(
        LimitEpisode episode,
        OilEpisodes came,
        List<(DateTimeOffset Day, IReadOnlyList<Alert> Alerts)> standing
    )
    {
        var point = episode.Crossing!;
        var stretch = came.StretchAt(episode.Measurand, point.At);
        bool IsOfSubject(Alert alert) => alert.Problem.Subject == episode.Subject;
        var warning = standing
            .Where(one => one.Day < point.At)
            .Reverse()
            .TakeWhile(one => one.Alerts.Any(IsOfSubject) && came.StretchAt(episode.Measurand, one.Day) == stretch)
            .ToList();
        return new Backtest.Crossing(
            MachineId,
            episode.Measurand,
            episode.Side,
            episode.Limit,
            point,
            warning.Count == 0 ? null : warning[warning.Count - 1].Day,
            warning.Count == 0 ? [] : [.. warning[0].Alerts.Where(IsOfSubject)]
        );
    }
}
