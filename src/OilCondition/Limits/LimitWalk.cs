using OilCondition.Sampling;

namespace OilCondition.Limits;

/// <summary>Walks through readings in order of time and keeps the state with dead band and confirmations.</summary>
internal sealed class LimitWalk(Limit limit, Limit figures)
{
    private LimitSideState standing = new(LimitState.Normal, null);
    private DateTimeOffset? since;
    private int waiting;
    private LimitSideState waitingFor;
    private DateTimeOffset? waitingSince;
    private bool decided = true;

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

        var undecided = !decided && standing.State < LimitState.Alert;
        var reason =
            undecided ? LimitReason.BoundDoesNotDecide
            : waiting > 0 ? LimitReason.AwaitingConfirmation
            : LimitReason.Compared;
        return new LimitEvaluation(
            limit,
            figures.Upper,
            figures.Lower,
            undecided ? LimitState.NotDetermined : standing.State,
            reason,
            latest,
            rate,
            standing.Figure ?? (waiting > 0 ? waitingFor.Figure : null),
            since,
            waiting > 0 ? waitingFor.State : LimitState.NotDetermined
        );
    }

    private void Take(DateTimeOffset? at, Reading reading)
    {
        var raw = LimitSideState.Of(figures.Upper, figures.Lower, reading, 0);
        decided = raw.State != LimitState.NotDetermined;
        if (!decided)
        {
            return;
        }

        if (raw.State > standing.State)
        {
            waitingFor = waiting == 0 || raw.State < waitingFor.State ? raw : waitingFor;
            waitingSince = waiting == 0 ? at : waitingSince;
            waiting++;
            if (waiting >= limit.Confirmations)
            {
                (standing, since, waiting) = (waitingFor, since ?? waitingSince, 0);
            }

            return;
        }

        // The same comparison with every figure moved inwards by the dead band falls later than it rose.
        waiting = 0;
        var held = LimitSideState.Of(figures.Upper, figures.Lower, reading, limit.DeadBand);
        if (held.State < standing.State)
        {
            standing = held.State >= LimitState.Alert ? held : new LimitSideState(LimitState.Normal, null);
            since = standing.State >= LimitState.Alert ? since : null;
        }
    }
}
