namespace OilCondition;

public sealed partial class Backtest
{
    /// <summary>What became of an alert.</summary>
    public enum AlertOutcome
    {
        /// <summary>A later reading of its subject passed the limit in time.</summary>
        Confirmed,

        /// <summary>The time passed, readings went on, and none of them passed the limit.</summary>
        NotConfirmed,

        /// <summary>The oil was changed or treated before anything could be seen: neither confirmed nor false.</summary>
        ActedOn,

        /// <summary>The record ends too early to say, or no fixed figure is set for its subject.</summary>
        Undecided,

        /// <summary>It is about the records or about a treatment, not about what the oil will do.</summary>
        NotJudged,
    }
}
