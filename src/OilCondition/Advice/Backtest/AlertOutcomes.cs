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
            .SelectMany(measurand =>
            {
                var figures = new FixedFigures(machine.Oil, measurand, limits.Limits);
                return FixedFigures.Sides.Select(side => new Watched(
                    measurand,
                    side,
                    figures.First(side),
                    came.Readings(measurand)
                ));
            })
            .ToLookup(
                watched => ProblemIdentity.Of(watched.Measurand, watched.Side).ToString(),
                StringComparer.Ordinal
            );
    }

    /// <summary>Whether an alert tells of what the oil does: the others are about records and treatments.</summary>
    public static bool IsAboutOil(Alert alert) => alert.Findings.Any(IsAboutOil);

    private static bool IsAboutOil(Finding finding) =>
        finding.Code
            is FindingCode.LimitPassed
                or FindingCode.RateOfChange
                or FindingCode.OutOfTheUsual
                or FindingCode.FreeWaterRunning
                or FindingCode.FreeWaterAtStandstill
                or FindingCode.RemainingLifeShort
                or FindingCode.CleanupRebounding;

    public Backtest.RaisedAlert Of(Alert alert, DateTimeOffset day, DateTimeOffset until)
    {
        var (outcome, at) = IsAboutOil(alert)
            ? Judge(alert, [.. bySubject[alert.Problem.Subject]], day, until)
            : (Backtest.AlertOutcome.NotJudged, null);
        return new Backtest.RaisedAlert(machineId, alert, day, outcome, at);
    }

    private (Backtest.AlertOutcome Outcome, DateTimeOffset? At) Judge(
        Alert alert,
        IReadOnlyList<Watched> watched,
        DateTimeOffset day,
        DateTimeOffset until
    )
    {
        var confirmed = Figures(alert, watched).Select(one => FirstBeyond(one.Watched, one.Figure, day, until)).Min();
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
    /// What has to be passed: the limit that a remaining life runs to, and for every other finding the first figure, alert or alarm, of any measurand
    /// of the subject. One of them is enough.
    /// </summary>
    private static IEnumerable<(Watched Watched, double Figure)> Figures(Alert alert, IReadOnlyList<Watched> watched)
    {
        var findings = alert.Findings.Where(IsAboutOil).ToList();
        var lives =
            from life in findings.OfType<RemainingLifeFinding>().Select(finding => finding.Life)
            from one in watched
            where one.Measurand.Equals(life.Series.Measurand) && one.Side == life.Side
            select (one, life.Limit);
        return findings.TrueForAll(finding => finding is RemainingLifeFinding)
            ? lives
            : lives.Concat(from one in watched let first = one.First where first is not null select (one, first.Value));
    }

    /// <summary>The first reading beyond a figure after a day and in time, of the oil as it was on that day.</summary>
    private DateTimeOffset? FirstBeyond(Watched watched, double figure, DateTimeOffset day, DateTimeOffset until)
    {
        if (came.StretchAt(watched.Measurand, day) is not { } stretch)
        {
            return null;
        }

        return watched
            .Readings.FirstOrDefault(point =>
                point.At > day
                && point.At <= until
                && point.Reading.IsBeyond(figure, watched.Side)
                && came.StretchAt(watched.Measurand, point.At) == stretch
            )
            ?.At;
    }

    private sealed record Watched(
        Measurand Measurand,
        LimitSide Side,
        double? First,
        IReadOnlyList<SeriesPoint> Readings
    );
}
