namespace OilCondition.Limits;

/// <summary>Walks through readings in order of time, up and down the two sides of a limit on their own.</summary>
internal sealed class LimitWalk(Limit limit, Limit figures)
{
    /// <summary>Readings as they are.</summary>
    public LimitEvaluation Over(IReadOnlyList<SeriesPoint> points)
    {
        var sides = Sides();
        foreach (var point in points)
        {
            Take(sides, point.At, point.Reading);
        }

        return Evaluation(sides, points[points.Count - 1].Reading, null);
    }

    /// <summary>Figures made of readings, such as rates.</summary>
    public LimitEvaluation Over(
        IReadOnlyList<(DateTimeOffset? At, Reading Reading)> readings,
        Reading latest,
        double? rate
    )
    {
        var sides = Sides();
        foreach (var (at, reading) in readings)
        {
            Take(sides, at, reading);
        }

        return Evaluation(sides, latest, rate);
    }

    /// <summary>A reading that left by the one side has not come back inside because it left by the other.</summary>
    private LimitSideWalk[] Sides()
    {
        var (upper, lower) = (Side(figures.Upper, mirrored: false), Side(figures.Lower, mirrored: true));
        return upper is null ? [lower!]
            : lower is null ? [upper]
            : [upper, lower];
    }

    private static void Take(LimitSideWalk[] sides, DateTimeOffset? at, Reading reading)
    {
        foreach (var side in sides)
        {
            side.Take(at, reading);
        }
    }

    private LimitEvaluation Evaluation(LimitSideWalk[] sides, Reading latest, double? rate)
    {
        var (worst, waiting) = (sides[0], sides[0]);
        var isDecided = true;
        foreach (var side in sides)
        {
            worst = side.State > worst.State ? side : worst;
            waiting = side.Pending > waiting.Pending ? side : waiting;
            isDecided &= side.IsDecided;
        }

        var undecided = worst.State < LimitState.Alert && !isDecided;
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
