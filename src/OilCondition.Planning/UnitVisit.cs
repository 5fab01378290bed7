using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>One visit of the unit: the way to the machine, connecting, treatment, disconnecting.</summary>
public sealed class UnitVisit : TreatmentDecision.IVisit
{
    internal UnitVisit(
        UnitTask task,
        bool isRunning,
        string travelFrom,
        GridVisit visit,
        TimeGrid grid,
        long due,
        WaitReason waitFor
    )
    {
        Task = task;
        IsRunning = isRunning;
        TravelFrom = travelFrom;
        Leave = grid.Moment(visit.Leave);
        Arrive = grid.Moment(visit.Arrive);
        ConnectStart = grid.Moment(visit.Start);
        ProcessEnd = grid.Moment(visit.ProcessEnd);
        DisconnectStart = grid.Moment(visit.DisconnectStart);
        DisconnectEnd = grid.Moment(visit.DisconnectEnd);
        ProcessStart = isRunning
            ? ConnectStart
            : grid.Moment(visit.Start + grid.Length(task.Connect) + grid.Length(task.HeatUp));
        WaitFor = waitFor;
        SlackToDue = grid.Span(due - visit.ProcessEnd);
        PastLatestEnd =
            !isRunning && task.LatestEnd is { } latest
                ? grid.Span(Math.Max(0, visit.DisconnectEnd - grid.Down(latest)))
                : TimeSpan.Zero;
    }

    /// <summary>What is treated.</summary>
    public UnitTask Task { get; }

    /// <summary>Whether the visit was under way when the plan was made; its way and its heating up are not known then.</summary>
    public bool IsRunning { get; }

    /// <summary>The place that the unit comes from.</summary>
    public string TravelFrom { get; }

    /// <summary>When the unit leaves for the machine.</summary>
    public DateTimeOffset Leave { get; }

    /// <summary>When it arrives.</summary>
    public DateTimeOffset Arrive { get; }

    /// <summary>When connecting begins.</summary>
    public DateTimeOffset ConnectStart { get; }

    /// <summary>When the oil is warm and the treatment begins.</summary>
    public DateTimeOffset ProcessStart { get; }

    /// <summary>When the treatment is done; lateness is counted to it.</summary>
    public DateTimeOffset ProcessEnd { get; }

    /// <summary>When disconnecting begins.</summary>
    public DateTimeOffset DisconnectStart { get; }

    /// <summary>When the unit is free.</summary>
    public DateTimeOffset DisconnectEnd { get; }

    string TreatmentDecision.IVisit.MachineId => Task.Id;

    DateTimeOffset TreatmentDecision.IVisit.Due => Task.Due;

    /// <summary>Waiting at the machine before connecting.</summary>
    public TimeSpan WaitBefore => ConnectStart - Arrive;

    /// <summary>What the waiting before connecting is for.</summary>
    public WaitReason WaitFor { get; }

    /// <summary>Waiting after the treatment until a crew comes to disconnect.</summary>
    public TimeSpan WaitAfter => DisconnectStart - ProcessEnd;

    /// <summary>From the end of the treatment to the risk date, on the grid of the plan; negative where it is late.</summary>
    public TimeSpan SlackToDue { get; }

    /// <summary>How late the treatment ends, on the grid of the plan; zero where it is in time.</summary>
    public TimeSpan Lateness => SlackToDue < TimeSpan.Zero ? -SlackToDue : TimeSpan.Zero;

    /// <summary>How far the visit ends after the task's latest end; zero in a plan that fits.</summary>
    public TimeSpan PastLatestEnd { get; }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Task.Id}: {(IsRunning ? "" : $"leave {TravelFrom} {PlainText.Time(Leave)}, ")}connect {PlainText.Time(ConnectStart)}, treated {PlainText.Time(ProcessEnd)}, free {PlainText.Time(DisconnectEnd)}, {DueWord}";

    internal string DueWord =>
        SlackToDue < TimeSpan.Zero
            ? $"{PlainText.Number(Lateness.TotalHours)} h late"
            : $"{PlainText.Number(SlackToDue.TotalHours)} h slack";
}
