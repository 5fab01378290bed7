using OilCondition.Text;

namespace OilCondition;

public sealed partial class Backtest
{
    /// <summary>An alert that stands on a replayed day and did not stand on the day before.</summary>
    public sealed class RaisedAlert
    {
        internal RaisedAlert(
            string machineId,
            Alert alert,
            DateTimeOffset raisedAt,
            AlertOutcome outcome,
            DateTimeOffset? decidedAt
        )
        {
            MachineId = machineId;
            Alert = alert;
            RaisedAt = raisedAt;
            Outcome = outcome;
            DecidedAt = decidedAt;
        }

        /// <summary>The machine.</summary>
        public string MachineId { get; }

        /// <summary>The alert as it was on that day, with its findings.</summary>
        public Alert Alert { get; }

        /// <summary>The first replayed day on which it stands.</summary>
        public DateTimeOffset RaisedAt { get; }

        /// <summary>What became of it.</summary>
        public AlertOutcome Outcome { get; }

        /// <summary>When that was known: the reading, the event, the end of the time; null where nothing was decided.</summary>
        public DateTimeOffset? DecidedAt { get; }

        internal string Subject => Alert.Problem.Subject;

        /// <summary>When, which alert, and what became of it.</summary>
        /// <returns>For example <c>2025-06-05 M1/charge-1/wear: confirmed 2025-07-05</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Date(RaisedAt)} {Alert.Key}: {PlainText.Spaced(Outcome)}"
            + (DecidedAt is { } at ? $" {PlainText.Date(at)}" : "");
    }
}
