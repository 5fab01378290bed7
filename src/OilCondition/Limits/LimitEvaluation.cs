using OilCondition.Sampling;

namespace OilCondition.Limits;

/// <summary>A reading held against a limit.</summary>
public sealed class LimitEvaluation
{
    internal LimitEvaluation(Limit limit, LimitState state, LimitReason reason, Reading? reading, double? figure)
    {
        Limit = limit;
        State = state;
        Reason = reason;
        Reading = reading;
        Figure = figure;
    }

    /// <summary>The limit, as it stands in the limit set.</summary>
    public Limit Limit { get; }

    /// <summary>Where the reading stands.</summary>
    public LimitState State { get; }

    /// <summary>Why.</summary>
    public LimitReason Reason { get; }

    /// <summary>The reading; null when there is none.</summary>
    public Reading? Reading { get; }

    /// <summary>The figure that was passed, as a value of the reading itself; null unless the state is alert or alarm.</summary>
    public double? Figure { get; }
}
