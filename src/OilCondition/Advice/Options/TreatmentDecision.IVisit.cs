namespace OilCondition;

/// <content>What carries a decision out.</content>
public sealed partial class TreatmentDecision
{
    /// <summary>A visit of a mobile unit to a machine, as a planner has it and a calendar shows it: the way, connecting, treatment, disconnecting.</summary>
    /// <remarks>Each moment lies at or after the one above it. Visits of <c>OilCondition.Planning</c> are such visits; a planner of your own can give others.</remarks>
    public interface IVisit
    {
        /// <summary>Identifier of the machine.</summary>
        string MachineId { get; }

        /// <summary>Whether the visit was under way when the plan was made; its way and its heating up are not known then.</summary>
        bool IsRunning { get; }

        /// <summary>When the unit leaves for the machine.</summary>
        DateTimeOffset Leave { get; }

        /// <summary>When it arrives.</summary>
        DateTimeOffset Arrive { get; }

        /// <summary>When connecting begins.</summary>
        DateTimeOffset ConnectStart { get; }

        /// <summary>When the treatment begins.</summary>
        DateTimeOffset ProcessStart { get; }

        /// <summary>When the treatment is done.</summary>
        DateTimeOffset ProcessEnd { get; }

        /// <summary>When disconnecting begins.</summary>
        DateTimeOffset DisconnectStart { get; }

        /// <summary>When the unit is free.</summary>
        DateTimeOffset DisconnectEnd { get; }

        /// <summary>By when the treatment should be done.</summary>
        DateTimeOffset Due { get; }

        /// <summary>From the end of the treatment to that date; negative where it is late.</summary>
        TimeSpan SlackToDue { get; }
    }
}
