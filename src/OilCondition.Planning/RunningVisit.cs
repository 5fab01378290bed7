using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>A visit that is under way when a plan is made: it is not moved, and the plan begins after it.</summary>
public sealed class RunningVisit
{
    /// <summary>States the visit.</summary>
    /// <param name="task">What is treated. Its windows and its latest end no longer decide anything.</param>
    /// <param name="connectedAt">When connecting began.</param>
    /// <param name="processEnd">When the treatment is expected to be done, such as by a cleanup monitor.</param>
    /// <exception cref="ArgumentOutOfRangeException">The treatment ends before connecting began, or a moment is outside 1900 to 2199.</exception>
    public RunningVisit(UnitTask task, DateTimeOffset connectedAt, DateTimeOffset processEnd)
    {
        Task = Guard.NotNull(task);
        ConnectedAt = Guard.Moment(connectedAt);
        ProcessEnd = Guard.Moment(processEnd);
        if (processEnd < connectedAt)
        {
            throw new ArgumentOutOfRangeException(
                nameof(processEnd),
                $"processEnd is {PlainText.Time(processEnd)}; allowed: from connectedAt on, {PlainText.Time(connectedAt)}."
            );
        }
    }

    /// <summary>What is treated.</summary>
    public UnitTask Task { get; }

    /// <summary>When connecting began.</summary>
    public DateTimeOffset ConnectedAt { get; }

    /// <summary>When the treatment is expected to be done.</summary>
    public DateTimeOffset ProcessEnd { get; }

    /// <inheritdoc/>
    public override string ToString() => $"{Task.Id} until {PlainText.Time(ProcessEnd)}";
}
