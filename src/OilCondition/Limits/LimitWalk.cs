namespace OilCondition.Limits;

/// <summary>Walks through readings in order of time, once, up and down the two sides of a limit on their own.</summary>
/// <remarks>A reading that left by the one side has not come back inside because it left by the other.</remarks>
internal readonly struct LimitWalk(Limit limit, Limit figures)
{
    private readonly LimitSideWalk? upper = Side(limit, figures.Upper, mirrored: false);
    private readonly LimitSideWalk? lower = Side(limit, figures.Lower, mirrored: true);

    /// <summary>Readings as they are.</summary>
    public LimitEvaluation Over(MeasurandSeries series)
    {
        for (var i = 0; i < series.Points.Count; i++)
        {
            Take(series.MomentOf(i), series.ReadingOf(i));
        }

        return Evaluation(series.ReadingOf(series.Points.Count - 1), null);
    }

    /// <summary>Figures made of readings, such as rates.</summary>
    public LimitEvaluation Over(
        IReadOnlyList<(DateTimeOffset? At, Reading Reading)> readings,
        Reading latest,
        double? rate
    )
    {
        foreach (var (at, reading) in readings)
        {
            Take(at, reading);
        }

        return Evaluation(latest, rate);
    }

    private void Take(DateTimeOffset? at, Reading reading)
    {
        upper?.Take(at, reading);
        lower?.Take(at, reading);
    }

    private LimitEvaluation Evaluation(Reading latest, double? rate)
    {
        // A limit has a band at least on one side.
        var (one, other) = (upper ?? lower!, lower ?? upper!);
        var worst = other.State > one.State ? other : one;
        var waiting = other.Pending > one.Pending ? other : one;
        var isDecided = one.IsDecided && other.IsDecided;
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

    private static LimitSideWalk? Side(Limit limit, LimitBand? band, bool mirrored) =>
        band is null ? null : new LimitSideWalk(band, mirrored, limit.DeadBand, limit.Confirmations);
}
