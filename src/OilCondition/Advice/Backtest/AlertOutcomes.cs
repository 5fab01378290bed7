namespace OilCondition;

/// <summary>Holds each alert against what came.</summary>
internal sealed class AlertOutcomes
{
    private readonly string machineId;
    private readonly OilEpisodes came;
    private readonly ILookup<string, Watched> bySubject;

    public AlertOutcomes(Machine machine, LimitSet limits, OilEpisodes came)
    {
        machineId = machine.Id;
        this.came = came;
        bySubject = limits
            .Limits.Select(limit => limit.Measurand)
            .Distinct()
            .Select(measurand => new Watched(
                measurand,
                new FixedFigures(machine.Oil, measurand, limits.Limits),
                came.Readings(measurand)
            ))
            .ToLookup(watched => Alert.SubjectOf(watched.Measurand), StringComparer.Ordinal);
    }

    /// <summary>Whether an alert tells of what the oil does: the others are about records and treatments.</summary>
    public static bool IsAboutOil(Alert alert) =>
        alert.Findings[0].Code
            is FindingCode.LimitPassed
                or FindingCode.RateOfChange
                or FindingCode.OutOfTheUsual
                or FindingCode.FreeWaterRunning
                or FindingCode.FreeWaterAtStandstill
                or FindingCode.RemainingLifeShort
                or FindingCode.CleanupRebounding;

    public static string SubjectOf(Alert alert) => Alert.SubjectOf(alert.Findings[0].Measurand);

    public Backtest.RaisedAlert Of(Alert alert, DateTimeOffset day, DateTimeOffset until)
    {
        var subject = SubjectOf(alert);
        var (outcome, at) = IsAboutOil(alert)
            ? Judge(alert, [.. bySubject[subject]], day, until)
            : (Backtest.AlertOutcome.NotJudged, null);
        return new Backtest.RaisedAlert(machineId, subject, alert, day, outcome, at);
    }

    private (Backtest.AlertOutcome Outcome, DateTimeOffset? At) Judge(
        Alert alert,
        IReadOnlyList<Watched> watched,
        DateTimeOffset day,
        DateTimeOffset until
    )
    {
        var confirmed = Figures(alert, watched)
            .Select(one => FirstBeyond(one.Watched, one.Side, one.Figure, day, until))
            .Min();
        if (confirmed is not null)
        {
            return (Backtest.AlertOutcome.Confirmed, confirmed);
        }

        var acted = came.ActedOnAfter(alert.Findings[0].Measurand, day);
        if (acted <= until)
        {
            return (Backtest.AlertOutcome.ActedOn, acted);
        }

        var lasted = Figures(alert, watched).Any(one => one.Watched.Readings.Any(point => point.At >= until));
        return lasted ? (Backtest.AlertOutcome.NotConfirmed, until) : (Backtest.AlertOutcome.Undecided, null);
    }

    /// <summary>
    /// What has to be passed: the limit that a remaining life runs to, and else the first figure, alert or alarm, of any measurand of the subject.
    /// </summary>
    private static IEnumerable<(Watched Watched, LimitSide Side, double Figure)> Figures(
        Alert alert,
        IReadOnlyList<Watched> watched
    )
    {
        var lives = alert.Findings.OfType<RemainingLifeFinding>().Select(finding => finding.Life).ToList();
        return lives.Count > 0
            ? from life in lives
            from one in watched
            where one.Measurand.Equals(life.Series.Measurand)
            select (one, life.Side, life.Limit)
            : from one in watched
            from side in FixedFigures.Sides
            let figure = one.Figures.First(side)
            where figure is not null
            select (one, side, figure.Value);
    }

    /// <summary>The first reading beyond a figure after a day and in time, of the oil as it was on that day.</summary>
    private DateTimeOffset? FirstBeyond(
        Watched watched,
        LimitSide side,
        double figure,
        DateTimeOffset day,
        DateTimeOffset until
    )
    {
        if (came.StretchAt(watched.Measurand, day) is not { } stretch)
        {
            return null;
        }

        return watched
            .Readings.FirstOrDefault(point =>
                point.At > day
                && point.At <= until
                && FixedFigures.IsBeyond(point.Reading, figure, side)
                && came.StretchAt(watched.Measurand, point.At) == stretch
            )
            ?.At;
    }

    private sealed record Watched(Measurand Measurand, FixedFigures Figures, IReadOnlyList<SeriesPoint> Readings);
}
