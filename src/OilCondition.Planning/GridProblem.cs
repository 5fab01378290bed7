using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>A plan to be made, in whole steps, its tasks in the order of their ids. Everything that computes times asks it.</summary>
internal sealed class GridProblem
{
    private readonly long[,] travel;

    public GridProblem(IReadOnlyList<UnitTask> tasks, MobileUnit unit, SchedulingOptions options)
    {
        Unit = unit;
        Grid = new TimeGrid(options.AsOf, options.Step);
        var sorted = tasks.OrderBy(task => task.Id, StringComparer.Ordinal).ToList();
        travel = TravelBetween([unit.Place, .. sorted.Select(task => task.Place)], unit.Travel);

        var off = unit
            .Unavailable.Select(window => (Math.Max(0, Grid.Down(window.From)), Grid.Up(window.To)))
            .Append((0, unit.HiredFrom is { } begin ? Grid.Up(begin) : 0))
            .ToList();
        Horizon = HorizonOf(sorted, off);
        if (unit.HiredUntil is { } end)
        {
            off.Add((Math.Max(0, Grid.Down(end)), Horizon));
        }

        Off = new Stretches(off);
        UnitHours = Always.Without(Off, Horizon);
        Crew =
            unit.CrewHours.Count == 0
                ? Always
                : new Stretches(
                    unit.CrewHours.Select(window => (Math.Max(0, Grid.Up(window.From)), Grid.Down(window.To)))
                );
        Tasks = [.. sorted.Select(task => new GridTask(task, Grid, Crew, UnitHours, Horizon))];
        Running = RunningIn(unit.Running);
        Free = Running?.DisconnectEnd ?? 0;
        LastFree = LatestFree();
    }

    public MobileUnit Unit { get; }

    public TimeGrid Grid { get; }

    public IReadOnlyList<GridTask> Tasks { get; }

    public Stretches Crew { get; }

    /// <summary>When the unit neither works nor travels.</summary>
    public Stretches Off { get; }

    public Stretches UnitHours { get; }

    public long Horizon { get; }

    public Stretches Always => new([(0, Horizon)]);

    /// <summary>The visit under way, which comes first; null where there is none.</summary>
    public GridVisit? Running { get; }

    /// <summary>When the unit is free of the visit under way.</summary>
    public long Free { get; }

    /// <summary>No order, each visit as early as it can be, ends later.</summary>
    public long LastFree { get; }

    /// <summary>Steps of travel to a task; from the unit's place where the task before is −1.</summary>
    public long Travel(int before, int task) => travel[before + 1, task + 1];

    /// <summary>The shortest of all ways that end at a task.</summary>
    public long ShortestWay(int task) =>
        Enumerable.Range(-1, Tasks.Count + 1).Where(before => before != task).Min(before => Travel(before, task));

    /// <summary>Weighted hours from weighted steps.</summary>
    public double WeightedHours(long lateness) => lateness * Grid.StepHours / GridTask.WeightScale;

    /// <summary>The place that the unit leaves.</summary>
    public string PlaceOf(int before) => before < 0 ? Unit.Place : Tasks[before].Task.Place;

    /// <summary>When a way can begin that is travelled in one piece while the unit is available; null where never.</summary>
    public long? Leave(long from, long length) => length == 0 ? from : UnitHours.Earliest(from, length);

    private long[,] TravelBetween(IReadOnlyList<string> places, TravelTimes times)
    {
        var steps = new long[places.Count, places.Count];
        for (var i = 0; i < places.Count; i++)
        {
            for (var k = 1; k < places.Count; k++)
            {
                steps[i, k] = i == k ? 0 : Grid.Length(times.Between(places[i], places[k]));
            }
        }

        return steps;
    }

    /// <summary>Long enough for every plan that makes sense: after the last date that is named, all work and the longest ways one after another.</summary>
    private long HorizonOf(List<UnitTask> tasks, List<(long From, long To)> off)
    {
        var running = Unit.Running;
        var named = tasks
            .SelectMany(task => task.Windows.Select(window => window.To).Append(task.EarliestStart))
            .Concat(Unit.CrewHours.Select(window => window.To))
            .Concat(running is null ? [] : [running.ProcessEnd])
            .Select(Grid.Up)
            .Concat(off.Select(part => part.To))
            .Append(0)
            .Max();
        var longest = travel.Cast<long>().DefaultIfEmpty(0).Max();
        return named
            + 1
            + (running is null ? 0 : Grid.Length(running.Task.Disconnect))
            + tasks.Sum(task =>
                Grid.Length(task.Connect)
                + Grid.Length(task.HeatUp)
                + Grid.Length(task.Process)
                + Grid.Length(task.Disconnect)
                + longest
            );
    }

    /// <summary>An end never falls when the unit is free later: as many visits as there are tasks, each the one that ends last, end no earlier than any order.</summary>
    private long LatestFree()
    {
        var longest = travel.Cast<long>().DefaultIfEmpty(0).Max();
        var free = Free;
        for (var visit = 0; visit < Tasks.Count; visit++)
        {
            var next = free;
            foreach (var task in Tasks)
            {
                var start =
                    Leave(free, longest) is { } leave && task.Starts.Earliest(leave + longest, 1) is { } begin ? begin
                    : task.Starts.IsEmpty ? free
                    : task.Starts.Parts[^1].To - 1;
                next = Math.Max(next, (task.DisconnectStart(start + task.ToProcessEnd) ?? free) + task.Disconnect);
            }

            free = next;
        }

        return Math.Min(free, Horizon);
    }

    private GridVisit? RunningIn(RunningVisit? running)
    {
        if (running is null)
        {
            return null;
        }

        var end = Math.Max(0, Grid.Up(running.ProcessEnd));
        var length = Grid.Length(running.Task.Disconnect);
        var off =
            (length == 0 ? end : Crew.And(UnitHours).Earliest(end, length))
            ?? throw new ArgumentException(
                $"No crew hours after {PlainText.Time(running.ProcessEnd)} are long enough to disconnect the unit from {running.Task.Id}; state them further ahead.",
                nameof(running)
            );
        var begin = Grid.Down(running.ConnectedAt);
        return new GridVisit(-1, -1, begin, begin, begin, end, off, off + length);
    }
}
