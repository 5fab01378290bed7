namespace OilCondition.Limits;

/// <summary>Walks through readings in order of time, up and down the two sides of a limit on their own.</summary>
internal sealed class LimitWalk(Limit limit, Limit figures)
{
    public LimitEvaluation Over(
        IReadOnlyList<(DateTimeOffset? At, Reading Reading)> readings,
        Reading latest,
        double? rate
    )
    {
        // A reading that left by the one side has not come back inside because it left by the other.
        var sides = new[] { Side(figures.Upper, mirrored: false), Side(figures.Lower, mirrored: true) }
            .OfType<LimitSideWalk>()
            .ToList();
        foreach (var (at, reading) in readings)
        {
            sides.ForEach(side => side.Take(at, reading));
        }

        var worst = sides.OrderByDescending(side => side.State).First();
        var waiting = sides.OrderByDescending(side => side.Pending).First();
        var undecided = worst.State < LimitState.Alert && sides.Exists(side => !side.IsDecided);
        var reason =
            undecided ? LimitReason.BoundDoesNotDecide
            : waiting.Pending >= LimitState.Alert ? LimitReason.AwaitingConfirmation
            : LimitReason.Compared;
        return new LimitEvaluation(
            limit,
            figures.Upper,
            figures.Lower,
            undecided ? LimitState.NotDetermined : worst.State,
            reason,
            latest,
            rate,
            worst.Figure ?? waiting.PendingFigure,
            worst.Since,
            waiting.Pending
        );
    }

    private LimitSideWalk? Side(LimitBand? band, bool mirrored) =>
        band is null ? null : new LimitSideWalk(band, mirrored, limit.DeadBand, limit.Confirmations);
}
