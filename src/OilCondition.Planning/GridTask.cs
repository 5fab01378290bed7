namespace OilCondition.Planning;

/// <summary>One task in whole steps, with every step at which its visit can begin.</summary>
internal sealed class GridTask
{
    private readonly Stretches crew;

    public GridTask(UnitTask task, TimeGrid grid, Stretches crew, Stretches unit, long horizon)
    {
        Task = task;
        this.crew = crew;
        Connect = grid.Length(task.Connect);
        HeatUp = grid.Length(task.HeatUp);
        Process = grid.Length(task.Process);
        Disconnect = grid.Length(task.Disconnect);
        Release = Math.Max(0, grid.Up(task.EarliestStart));
        Due = grid.Down(task.Due);
        LatestEnd = task.LatestEnd is { } end ? grid.Down(end) : null;
        Weight = (long)Math.Round(task.Weight * WeightScale);
        Windows =
            task.Windows.Count == 0
                ? new Stretches([(0, horizon)])
                : new Stretches(
                    task.Windows.Select(window => (Math.Max(0, grid.Up(window.From)), grid.Down(window.To)))
                );
        Starts = StartsIn(Windows, crew, unit, long.MaxValue);
        StartsInTime = LatestEnd is { } latest ? StartsIn(Windows, crew, unit, latest) : Starts;
    }

    /// <summary>Weights count in thousandths.</summary>
    public const long WeightScale = 1000;

    public UnitTask Task { get; }

    public long Connect { get; }

    public long HeatUp { get; }

    public long Process { get; }

    public long Disconnect { get; }

    public long Release { get; }

    public long Due { get; }

    public long? LatestEnd { get; }

    public long Weight { get; }

    public Stretches Windows { get; }

    /// <summary>Every step at which the visit can begin, with all that follows; a stretch [a, b] is held as [a, b + 1).</summary>
    public Stretches Starts { get; }

    /// <summary>The same, ending by the latest end.</summary>
    public Stretches StartsInTime { get; }

    /// <summary>From connecting to the end of the treatment: nothing in it waits.</summary>
    public long ToProcessEnd => Connect + HeatUp + Process;

    public long Least => ToProcessEnd + Disconnect;

    /// <summary>When disconnecting begins; null where no crew comes any more.</summary>
    public long? DisconnectStart(long processEnd) =>
        Disconnect == 0 ? processEnd : crew.Earliest(processEnd, Disconnect);

    /// <summary>
    /// Steps at which a visit can begin: connecting in crew hours (with heating up and treatment where they are attended), and the end of disconnecting, at
    /// the first crew that comes, still in the same free stretch of machine and unit. That end never falls as the begin rises, so that the last begin of a
    /// stretch follows from its last place for disconnecting.
    /// </summary>
    public Stretches StartsIn(Stretches windows, Stretches crewHours, Stretches unit, long latestEnd)
    {
        var manned = IsAttended ? ToProcessEnd : Connect;
        var starts = new List<(long From, long To)>();
        foreach (var (from, to) in windows.And(unit).Parts)
        {
            var until = Math.Min(to, latestEnd);
            var lastOff = Disconnect == 0 ? until : crewHours.Latest(until, Disconnect);
            if (lastOff is null)
            {
                continue;
            }

            var last = lastOff.Value - ToProcessEnd;
            var first = Math.Max(from, Release);
            if (manned == 0)
            {
                starts.Add((first, last + 1));
                continue;
            }

            foreach (var shift in crewHours.Parts)
            {
                starts.Add((Math.Max(first, shift.From), Math.Min(last, shift.To - manned) + 1));
            }
        }

        return new Stretches(starts);
    }

    private bool IsAttended => Task.IsAttended;
}
