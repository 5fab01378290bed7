using OilCondition.Text;

namespace OilCondition.Limits;

/// <summary>A reading, or a series of them, compared with a limit.</summary>
public sealed class LimitEvaluation
{
    internal LimitEvaluation(
        Limit limit,
        LimitBand? upper,
        LimitBand? lower,
        LimitState state,
        LimitReason reason,
        Reading? reading,
        double? rate = null,
        double? figure = null,
        DateTimeOffset? since = null,
        LimitState pending = LimitState.NotDetermined
    )
    {
        Limit = limit;
        Upper = upper;
        Lower = lower;
        State = state;
        Reason = reason;
        Reading = reading;
        Rate = rate;
        Figure = figure;
        Since = since;
        Pending = pending;
    }

    /// <summary>The limit, as it stands in the limit set.</summary>
    public Limit Limit { get; }

    /// <summary>The upper figures that were compared with, in the unit of the reading or of its rate; null for none.</summary>
    public LimitBand? Upper { get; }

    /// <summary>The lower figures that were compared with; null for none.</summary>
    public LimitBand? Lower { get; }

    /// <summary>Where the reading stands.</summary>
    public LimitState State { get; }

    /// <summary>Why.</summary>
    public LimitReason Reason { get; }

    /// <summary>The latest reading; null when there is none.</summary>
    public Reading? Reading { get; }

    /// <summary>For a rate of change: the latest one, per the limit's span; null otherwise.</summary>
    public double? Rate { get; }

    /// <summary>The figure that was passed, of the reading or of its rate; null unless the state, or the pending one, is alert or alarm.</summary>
    public double? Figure { get; }

    /// <summary>On which side that figure lies; null where there is none.</summary>
    public LimitSide? Side =>
        Figure is not { } figure ? null
        : Upper?.Alert == figure || Upper?.Alarm == figure ? LimitSide.Upper
        : LimitSide.Lower;

    /// <summary>Since when the state is alert or alarm: the first of the readings that made it so; null otherwise.</summary>
    public DateTimeOffset? Since { get; }

    /// <summary>The zone that the latest readings lie in without having been confirmed yet; not determined when nothing waits.</summary>
    public LimitState Pending { get; }

    internal static LimitEvaluation Undetermined(
        Limit limit,
        LimitReason reason,
        Reading? reading,
        Limit? figures = null
    ) => new(limit, figures?.Upper, figures?.Lower, LimitState.NotDetermined, reason, reading);

    /// <summary>Reading, state and why.</summary>
    /// <returns>For example <c>water content 212 mg/kg: alert since 2025-10-03</c>.</returns>
    public override string ToString() =>
        $"{Limit.Measurand.Name} {(Reading is { } reading ? Limit.Measurand.Text(reading) : "without a reading")}: "
        + (State == LimitState.NotDetermined ? $"not determined ({PlainText.Spaced(Reason)})" : PlainText.Spaced(State))
        + (Since is { } since ? $" since {PlainText.Date(since)}" : "")
        + (Pending >= LimitState.Alert ? $", {PlainText.Spaced(Pending)} waits for confirmation" : "")
        + string.Concat(Limit.MissingFigures.Select(missing => $"; {missing}"));
}
