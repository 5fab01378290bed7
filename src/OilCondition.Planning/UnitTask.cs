using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>One machine that the mobile unit is to treat: where, from when, by when, and how long it takes.</summary>
/// <remarks>
/// A visit is connecting, heating up, treatment and disconnecting, without a break, in one window of the machine. Hands are needed to connect and to
/// disconnect; the treatment itself runs unattended unless the task says otherwise.
/// </remarks>
public sealed class UnitTask
{
    private const double MostHours = 8784;

    /// <summary>States a task.</summary>
    /// <param name="id">Identifier of the machine, unique in a plan.</param>
    /// <param name="place">Where the machine stands, as travel times name it.</param>
    /// <param name="earliestStart">When connecting may begin.</param>
    /// <param name="due">Risk date: by when the treatment should be done. It may be passed, at the price of the weight.</param>
    /// <param name="process">How long the treatment takes once the oil is warm, above 0 to 8784 h.</param>
    /// <param name="weight">What an hour after the risk date counts, 0 to 10 000; taken to three decimals.</param>
    /// <param name="connect">How long connecting takes, 0 to 8784 h; none unless stated.</param>
    /// <param name="heatUp">How long the oil takes to warm up once connected, 0 to 8784 h; none unless stated.</param>
    /// <param name="disconnect">How long disconnecting takes, 0 to 8784 h; none unless stated.</param>
    /// <param name="latestEnd">When the unit must be off the machine whatever it costs; null where nothing forces it.</param>
    /// <param name="windows">When the machine may be worked on, connecting to disconnecting in one of them; none stated: always.</param>
    /// <param name="isAttended">Whether someone must stand by while the oil warms up and is treated.</param>
    /// <exception cref="ArgumentException">A text is blank, or windows hold null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A span, the weight or a moment is out of range.</exception>
    public UnitTask(
        string id,
        string place,
        DateTimeOffset earliestStart,
        DateTimeOffset due,
        TimeSpan process,
        double weight = 1,
        TimeSpan? connect = null,
        TimeSpan? heatUp = null,
        TimeSpan? disconnect = null,
        DateTimeOffset? latestEnd = null,
        IReadOnlyList<WorkWindow>? windows = null,
        bool isAttended = false
    )
    {
        Id = Guard.NotBlank(id);
        Place = Guard.NotBlank(place);
        EarliestStart = Guard.Moment(earliestStart);
        Due = Guard.Moment(due);
        Guard.Positive(process.TotalHours, "h", nameof(process));
        Process = Hours(process, nameof(process));
        Weight = Guard.InRange(weight, 0, 10_000, "");
        Connect = Hours(connect, nameof(connect));
        HeatUp = Hours(heatUp, nameof(heatUp));
        Disconnect = Hours(disconnect, nameof(disconnect));
        LatestEnd = latestEnd is { } end ? Guard.Moment(end, nameof(latestEnd)) : null;
        Windows = [.. (windows ?? []).Select(window => Guard.NotNull(window, nameof(windows)))];
        IsAttended = isAttended;
    }

    /// <summary>Identifier of the machine.</summary>
    public string Id { get; }

    /// <summary>Where the machine stands.</summary>
    public string Place { get; }

    /// <summary>When connecting may begin.</summary>
    public DateTimeOffset EarliestStart { get; }

    /// <summary>Risk date: by when the treatment should be done.</summary>
    public DateTimeOffset Due { get; }

    /// <summary>How long the treatment takes once the oil is warm.</summary>
    public TimeSpan Process { get; }

    /// <summary>What an hour after the risk date counts.</summary>
    public double Weight { get; }

    /// <summary>How long connecting takes.</summary>
    public TimeSpan Connect { get; }

    /// <summary>How long the oil takes to warm up.</summary>
    public TimeSpan HeatUp { get; }

    /// <summary>How long disconnecting takes.</summary>
    public TimeSpan Disconnect { get; }

    /// <summary>When the unit must be off the machine; null where nothing forces it.</summary>
    public DateTimeOffset? LatestEnd { get; }

    /// <summary>When the machine may be worked on; empty for always.</summary>
    public IReadOnlyList<WorkWindow> Windows { get; }

    /// <summary>Whether someone must stand by while the oil warms up and is treated.</summary>
    public bool IsAttended { get; }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Id} at {Place}: {PlainText.Number((Connect + HeatUp + Process + Disconnect).TotalHours)} h, due {PlainText.Time(Due)}, weight {PlainText.Number(Weight)}";

    private static TimeSpan Hours(TimeSpan? span, string name)
    {
        Guard.InRange((span ?? TimeSpan.Zero).TotalHours, 0, MostHours, "h", name);
        return span ?? TimeSpan.Zero;
    }
}
