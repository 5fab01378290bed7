using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>The one mobile treatment unit: where it is, how it travels, who can connect it, and when it is away.</summary>
public sealed class MobileUnit
{
    /// <summary>States the unit.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="place">Where it is now.</param>
    /// <param name="travel">Travel times between places; none where all machines stand at one place.</param>
    /// <param name="crewHours">When it can be connected and disconnected, each in one window; none stated: always.</param>
    /// <param name="unavailable">When it neither works nor travels, such as its own maintenance.</param>
    /// <param name="hiredFrom">When its hire begins; null where it is there already.</param>
    /// <param name="hiredUntil">When its hire ends: it must be off the last machine. Null where no end is set.</param>
    /// <param name="running">The visit that is under way and comes first; null where the unit is free.</param>
    /// <exception cref="ArgumentException">A text is blank, a list holds null, or the running visit is at another place.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The hire ends before it begins, or a moment is outside 1900 to 2199.</exception>
    public MobileUnit(
        string name,
        string place,
        TravelTimes? travel = null,
        IReadOnlyList<WorkWindow>? crewHours = null,
        IReadOnlyList<WorkWindow>? unavailable = null,
        DateTimeOffset? hiredFrom = null,
        DateTimeOffset? hiredUntil = null,
        RunningVisit? running = null
    )
    {
        Name = Guard.NotBlank(name);
        Place = Guard.NotBlank(place);
        Travel = travel ?? TravelTimes.None;
        CrewHours = [.. (crewHours ?? []).Select(window => Guard.NotNull(window, nameof(crewHours)))];
        Unavailable = [.. (unavailable ?? []).Select(window => Guard.NotNull(window, nameof(unavailable)))];
        HiredFrom = hiredFrom is { } begin ? Guard.Moment(begin, nameof(hiredFrom)) : null;
        HiredUntil = hiredUntil is { } end ? Guard.Moment(end, nameof(hiredUntil)) : null;
        Running = running;
        if (hiredUntil <= hiredFrom)
        {
            throw new ArgumentOutOfRangeException(
                nameof(hiredUntil),
                $"hiredUntil is {PlainText.Time(hiredUntil.Value)}; allowed: after hiredFrom, {PlainText.Time(hiredFrom.Value)}."
            );
        }

        if (running is not null && running.Task.Place != place)
        {
            throw new ArgumentException(
                $"place is {place}; the running visit of {running.Task.Id} is at {running.Task.Place}: both must be the same.",
                nameof(place)
            );
        }
    }

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>Where it is now.</summary>
    public string Place { get; }

    /// <summary>Travel times between places.</summary>
    public TravelTimes Travel { get; }

    /// <summary>When it can be connected and disconnected; empty for always.</summary>
    public IReadOnlyList<WorkWindow> CrewHours { get; }

    /// <summary>When it neither works nor travels.</summary>
    public IReadOnlyList<WorkWindow> Unavailable { get; }

    /// <summary>When its hire begins; null where it is there already.</summary>
    public DateTimeOffset? HiredFrom { get; }

    /// <summary>When its hire ends; null where no end is set.</summary>
    public DateTimeOffset? HiredUntil { get; }

    /// <summary>The visit that is under way; null where the unit is free.</summary>
    public RunningVisit? Running { get; }

    /// <inheritdoc/>
    public override string ToString() => $"{Name} at {Place}{(Running is null ? "" : $", treating {Running.Task.Id}")}";
}
