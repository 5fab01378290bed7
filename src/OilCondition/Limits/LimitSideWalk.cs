namespace OilCondition.Limits;

/// <summary>One side of a limit along readings in order of time: the state with dead band and confirmations.</summary>
/// <remarks>The lower side is the upper one of the negative readings.</remarks>
internal sealed class LimitSideWalk
{
    private readonly LimitBand band;
    private readonly bool mirrored;
    private readonly double deadBand;
    private readonly int confirmations;
    private int beyondAlert;
    private int beyondAlarm;
    private DateTimeOffset? beyondSince;

    public LimitSideWalk(LimitBand band, bool mirrored, double deadBand, int confirmations)
    {
        this.band = mirrored ? band.Map(figure => -figure) : band;
        this.mirrored = mirrored;
        this.deadBand = deadBand;
        this.confirmations = confirmations;
    }

    public LimitState State { get; private set; } = LimitState.Normal;

    public DateTimeOffset? Since { get; private set; }

    /// <summary>Whether the latest reading, when it is only a bound, says on which side of the figures the value lies.</summary>
    public bool IsDecided { get; private set; } = true;

    public double? Figure => FigureOf(State);

    /// <summary>The zone that further readings would confirm next; not determined when none waits.</summary>
    public LimitState Pending
    {
        get
        {
            if (State < LimitState.Alert && beyondAlert > beyondAlarm)
            {
                return LimitState.Alert;
            }

            return State < LimitState.Alarm && beyondAlarm > 0 ? LimitState.Alarm : LimitState.NotDetermined;
        }
    }

    public double? PendingFigure => FigureOf(Pending);

    public void Take(DateTimeOffset? at, Reading reading)
    {
        var value = mirrored ? -reading.Value : reading.Value;
        var isAtMost = reading.Qualifier == (mirrored ? Qualifier.GreaterThan : Qualifier.LessThan);
        var isAtLeast = reading.Qualifier == (mirrored ? Qualifier.LessThan : Qualifier.GreaterThan);
        var zone = ZoneOf(value, isAtLeast, 0);

        // 'At most x' is anywhere below x, and 'at least x' anywhere above it: the one decides nothing above the lowest figure, the other
        // nothing below it.
        IsDecided = isAtMost ? value <= (band.Alert ?? band.Alarm) : !isAtLeast || zone >= LimitState.Alert;
        if (!IsDecided)
        {
            return;
        }

        beyondSince =
            zone < LimitState.Alert ? null
            : beyondAlert == 0 ? at
            : beyondSince;
        beyondAlert = zone >= LimitState.Alert ? beyondAlert + 1 : 0;
        // 'At least x' in the alert zone leaves it open whether the value is in the alarm zone: it neither confirms nor denies an alarm.
        beyondAlarm =
            zone == LimitState.Alarm ? beyondAlarm + 1
            : isAtLeast && band.Alarm is not null ? beyondAlarm
            : 0;
        var confirmed =
            beyondAlarm >= confirmations ? LimitState.Alarm
            : beyondAlert >= confirmations ? LimitState.Alert
            : LimitState.Normal;
        if (confirmed > State)
        {
            State = confirmed;
            Since ??= beyondSince;
            return;
        }

        Fall(value, isAtMost, isAtLeast);
    }

    /// <summary>Back to the zone in which the reading lies when every figure is moved inwards by the dead band.</summary>
    private void Fall(double value, bool isAtMost, bool isAtLeast)
    {
        var clearsNothing = isAtLeast || (isAtMost && value > (band.Alert ?? band.Alarm) - deadBand);
        var held = ZoneOf(value, isAtLeast, deadBand);
        if (clearsNothing || held >= State)
        {
            return;
        }

        State = held;
        Since = held >= LimitState.Alert ? Since : null;
    }

    /// <summary>A reading on a figure is not beyond it; one of 'more than the figure' is.</summary>
    private LimitState ZoneOf(double value, bool isAtLeast, double inwards)
    {
        bool Beyond(double? figure) =>
            figure is { } one && (isAtLeast ? value >= one - inwards : value > one - inwards);
        return Beyond(band.Alarm) ? LimitState.Alarm
            : Beyond(band.Alert) ? LimitState.Alert
            : LimitState.Normal;
    }

    private double? FigureOf(LimitState state)
    {
        var figure = state switch
        {
            LimitState.Alarm => band.Alarm,
            LimitState.Alert => band.Alert,
            _ => null,
        };
        return mirrored ? -figure : figure;
    }
}
