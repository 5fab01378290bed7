using System.Globalization;
using Google.OrTools.Sat;
using Google.OrTools.Util;

namespace OilCondition.Planning;

/// <summary>
/// The plan as a model of the constraint solver: which visit follows which (a circuit through all visits), when each begins, and that no two overlap. The
/// solver finds orders and proves bounds; what an order comes to is computed by <see cref="GridCourse"/>.
/// </summary>
internal sealed class SequenceModel
{
    private readonly GridProblem problem;
    private readonly bool isRelaxed;
    private readonly Stretches ahead;
    private readonly CpModel model = new();
    private readonly LinearExpr[] starts;
    private readonly LinearExpr[] offs;
    private readonly LinearExpr[] ends;
    private readonly BoolVar?[] skipped;
    private readonly BoolVar[,] follows;
    private readonly List<(BoolVar First, int One, int Other)> pairs = [];
    private readonly List<(IntVar Variable, Func<GridVisit, long> Value, int Task)> hinted = [];
    private readonly List<(IntVar Variable, Func<GridCourse, long> Value)> totals = [];

    /// <summary>States the model; relaxed, tasks may be left out and latest ends passed.</summary>
    public SequenceModel(GridProblem problem, bool isRelaxed)
    {
        this.problem = problem;
        ahead = new Stretches([(0, problem.LastFree + 1)]);
        this.isRelaxed = isRelaxed;
        var count = problem.Tasks.Count;
        starts = new LinearExpr[count];
        offs = new LinearExpr[count];
        ends = new LinearExpr[count];
        skipped = new BoolVar?[count];
        follows = new BoolVar[count + 1, count + 1];
        for (var task = 0; task < count; task++)
        {
            AddVisit(task);
        }

        AddOrder();
        AddPairs();
        AddTravelAroundUnavailableHours();
        Shortfall = ShortfallExpression();
        Lateness = LatenessExpression();
        Free = FreeVariable();
    }

    /// <summary>Steps past latest ends; a task left out counts more than all of them.</summary>
    public LinearExpr Shortfall { get; }

    /// <summary>Weighted lateness in thousandths of steps.</summary>
    public LinearExpr Lateness { get; }

    /// <summary>When the unit is free of the last visit.</summary>
    public LinearExpr Free { get; }

    /// <summary>What one task left out counts in <see cref="Shortfall"/>.</summary>
    public long LeftOutCount => (problem.Horizon + 1) * (problem.Tasks.Count + 1);

    public long ShortfallOf(GridCost cost) => cost.LeftOut * LeftOutCount + cost.Overshoot;

    /// <summary>
    /// Minimises a total, from a course that is known, and holds it at what was found for the searches that follow.
    /// </summary>
    /// <returns>An order at least as good as the course where one was found, and a value below which no plan can come.</returns>
    public (IReadOnlyList<int>? Order, long Bound, double Work) Minimise(
        LinearExpr total,
        Func<GridCost, long> value,
        GridCourse known,
        double effort
    )
    {
        model.Minimize(total);
        Hint(known);
        var solver = new CpSolver { StringParameters = Parameters(effort) };
        var status = solver.Solve(model);
        var isFound = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        var order = isFound ? OrderIn(solver) : null;
        var reached = order is null ? value(known.Cost) : value(GridCourse.Of(problem, order).Cost);
        model.Add(total <= Math.Min(reached, value(known.Cost)));
        // A hair off the whole number that the bound is.
        var bound =
            status == CpSolverStatus.Optimal ? reached
            : status is CpSolverStatus.Feasible or CpSolverStatus.Unknown
                ? (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6)
            : 0;
        return (order, Math.Max(0, bound), solver.Response?.DeterministicTime ?? 0);
    }

    /// <summary>Holds a total that is known to be the best.</summary>
    public void Hold(LinearExpr total, long value) => model.Add(total <= value);

    private static string Parameters(double effort) =>
        // One worker and a limit by work make the search the same every time. Presolve multiplies crew hours into domains for minutes.
        $"num_workers:1 random_seed:1 linearization_level:2 cp_model_presolve:false max_deterministic_time:{effort.ToString(CultureInfo.InvariantCulture)}";

    private void AddVisit(int task)
    {
        var what = problem.Tasks[task];
        var canStart = StartsOf(what);
        if (canStart.IsEmpty)
        {
            starts[task] = offs[task] = ends[task] = LinearExpr.Constant(0);
            return;
        }

        var start = model.NewIntVarFromDomain(DomainOf(canStart, 1), $"start {task}");
        hinted.Add((start, visit => visit.Start, task));
        starts[task] = start;
        if (what.Disconnect == 0 || problem.Unit.CrewHours.Count == 0)
        {
            offs[task] = start + what.ToProcessEnd;
        }
        else
        {
            var off = model.NewIntVarFromDomain(
                DomainOf(problem.Crew.And(problem.UnitHours).And(ahead), what.Disconnect),
                $"off {task}"
            );
            hinted.Add((off, visit => visit.DisconnectStart, task));
            offs[task] = off;
            model.Add(off >= start + what.ToProcessEnd);
        }

        ends[task] = offs[task] + what.Disconnect;
    }

    private Stretches StartsOf(GridTask what) => (isRelaxed ? what.Starts : what.StartsInTime).And(ahead);

    private static Domain DomainOf(Stretches stretches, long length)
    {
        var parts = stretches
            .Parts.Where(part => part.To - part.From >= length)
            .Select(part => new[] { part.From, part.To - length })
            .ToArray();
        return Domain.FromIntervals(parts);
    }

    /// <summary>Node 0 is where the unit is now, and where the circuit closes.</summary>
    private void AddOrder()
    {
        var count = problem.Tasks.Count;
        var circuit = model.AddCircuit();
        if (count == 0)
        {
            return;
        }

        for (var from = -1; from < count; from++)
        {
            for (var to = -1; to < count; to++)
            {
                if (from == to)
                {
                    continue;
                }

                var follow = model.NewBoolVar($"{from} then {to}");
                follows[from + 1, to + 1] = follow;
                circuit.AddArc(from + 1, to + 1, follow);
                if (to >= 0)
                {
                    var free = from < 0 ? LinearExpr.Constant(problem.Free) : ends[from];
                    model.Add(starts[to] >= free + problem.Travel(from, to)).OnlyEnforceIf(follow);
                }
            }
        }

        if (!isRelaxed)
        {
            return;
        }

        var none = model.NewBoolVar("no visit");
        circuit.AddArc(0, 0, none);
        for (var task = 0; task < count; task++)
        {
            var skip = model.NewBoolVar($"without {task}");
            skipped[task] = skip;
            circuit.AddArc(task + 1, task + 1, skip);
            model.AddImplication(none, skip);
            if (StartsOf(problem.Tasks[task]).IsEmpty)
            {
                model.Add(skip == 1);
            }
        }
    }

    /// <summary>For each two visits which comes first, with the shortest way between them by whatever places: tells the solver more than neighbours do.</summary>
    private void AddPairs()
    {
        var count = problem.Tasks.Count;
        var ways = ShortestWays();
        for (var one = 0; one < count; one++)
        {
            for (var other = one + 1; other < count; other++)
            {
                var first = model.NewBoolVar($"{one} before {other}");
                pairs.Add((first, one, other));
                model.AddImplication(follows[one + 1, other + 1], first);
                model.AddImplication(follows[other + 1, one + 1], first.Not());
                ILiteral[] both = isRelaxed ? [skipped[one]!.Not(), skipped[other]!.Not()] : [];
                model.Add(starts[other] >= ends[one] + ways[one, other]).OnlyEnforceIf([first, .. both]);
                model.Add(starts[one] >= ends[other] + ways[other, one]).OnlyEnforceIf([first.Not(), .. both]);
            }
        }
    }

    private long[,] ShortestWays()
    {
        var count = problem.Tasks.Count;
        var ways = new long[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var k = 0; k < count; k++)
            {
                ways[i, k] = problem.Travel(i, k);
            }
        }

        for (var by = 0; by < count; by++)
        {
            for (var i = 0; i < count; i++)
            {
                for (var k = 0; k < count; k++)
                {
                    ways[i, k] = Math.Min(ways[i, k], ways[i, by] + ways[by, k]);
                }
            }
        }

        return ways;
    }

    /// <summary>The way to each visit is travelled in one piece while the unit is available.</summary>
    private void AddTravelAroundUnavailableHours()
    {
        var count = problem.Tasks.Count;
        if (problem.Off.IsEmpty || count == 0)
        {
            return;
        }

        var blocks = problem
            .Off.Parts.Select((part, i) => model.NewFixedSizeIntervalVar(part.From, part.To - part.From, $"off {i}"))
            .ToList();
        var longest = 0L;
        for (var task = 0; task < count; task++)
        {
            var lengths = Enumerable
                .Range(-1, count + 1)
                .Where(before => before != task)
                .Select(before => (Before: before, Length: problem.Travel(before, task)))
                .ToList();
            var most = lengths.Max(one => one.Length);
            longest = Math.Max(longest, most);
            if (most == 0)
            {
                continue;
            }

            var leave = model.NewIntVar(0, problem.Horizon, $"leave {task}");
            var length = model.NewIntVar(0, most, $"way {task}");
            var arrive = model.NewIntVar(0, problem.Horizon + most, $"arrive {task}");
            hinted.Add((leave, visit => visit.Leave, task));
            hinted.Add((length, visit => visit.Arrive - visit.Leave, task));
            hinted.Add((arrive, visit => visit.Arrive, task));
            var way = model.NewIntervalVar(leave, length, arrive, $"way of {task}");
            foreach (var block in blocks)
            {
                model.AddNoOverlap([way, block]);
            }

            var here = model.Add(starts[task] >= arrive);
            if (skipped[task] is { } skip)
            {
                here.OnlyEnforceIf(skip.Not());
            }

            foreach (var (before, steps) in lengths)
            {
                var follow = follows[before + 1, task + 1];
                var free = before < 0 ? LinearExpr.Constant(problem.Free) : ends[before];
                model.Add(leave >= free).OnlyEnforceIf(follow);
                model.Add(length == steps).OnlyEnforceIf(follow);
            }
        }
    }

    private LinearExpr ShortfallExpression()
    {
        var parts = new List<LinearExpr>();
        for (var task = 0; task < skipped.Length; task++)
        {
            if (skipped[task] is not { } skip)
            {
                continue;
            }

            parts.Add(skip * LeftOutCount);
            if (problem.Tasks[task].LatestEnd is { } latest)
            {
                var over = model.NewIntVar(0, problem.Horizon + Math.Max(0, -latest), $"over {task}");
                hinted.Add((over, visit => Math.Max(0, visit.DisconnectEnd - latest), task));
                model.Add(over >= ends[task] - latest).OnlyEnforceIf(skip.Not());
                parts.Add(over);
            }
        }

        return LinearExpr.Sum(parts);
    }

    private LinearExpr LatenessExpression()
    {
        var parts = new List<LinearExpr>();
        for (var task = 0; task < problem.Tasks.Count; task++)
        {
            var what = problem.Tasks[task];
            var canStart = StartsOf(what);
            var most = (canStart.IsEmpty ? 0 : canStart.Parts[^1].To) + what.ToProcessEnd - what.Due;
            if (what.Weight == 0 || most <= 0)
            {
                continue;
            }

            var late = model.NewIntVar(0, most, $"late {task}");
            hinted.Add((late, visit => Math.Max(0, visit.ProcessEnd - what.Due), task));
            var meets = model.Add(late >= starts[task] + (what.ToProcessEnd - what.Due));
            if (skipped[task] is { } skip)
            {
                meets.OnlyEnforceIf(skip.Not());
            }

            parts.Add(late * what.Weight);
        }

        return LinearExpr.Sum(parts);
    }

    private IntVar FreeVariable()
    {
        var free = model.NewIntVar(problem.Free, problem.LastFree, "free");
        totals.Add((free, course => course.Cost.Free));
        for (var task = 0; task < problem.Tasks.Count; task++)
        {
            var after = model.Add(free >= ends[task]);
            if (skipped[task] is { } skip)
            {
                after.OnlyEnforceIf(skip.Not());
            }
        }

        return free;
    }

    private void Hint(GridCourse course)
    {
        model.ClearHints();
        var visits = course.Visits.ToDictionary(visit => visit.Task);
        foreach (var (variable, value, task) in hinted)
        {
            if (visits.TryGetValue(task, out var visit))
            {
                model.AddHint(variable, value(visit));
            }
        }

        foreach (var (variable, value) in totals)
        {
            model.AddHint(variable, value(course));
        }

        var follow = course.Visits.Select(visit => (visit.Before, visit.Task)).ToHashSet();
        follow.Add((course.Visits.Count == 0 ? -1 : course.Visits[^1].Task, -1));
        for (var from = 0; from < follows.GetLength(0); from++)
        {
            for (var to = 0; to < follows.GetLength(1); to++)
            {
                if (follows[from, to] is { } arc)
                {
                    model.AddHint(arc, follow.Contains((from - 1, to - 1)));
                }
            }
        }

        foreach (var (first, one, other) in pairs)
        {
            if (visits.TryGetValue(one, out var a) && visits.TryGetValue(other, out var b))
            {
                model.AddHint(first, a.Start < b.Start || (a.Start == b.Start && a.DisconnectEnd <= b.Start));
            }
        }

        for (var task = 0; task < skipped.Length; task++)
        {
            if (skipped[task] is { } skip)
            {
                model.AddHint(skip, !visits.ContainsKey(task));
            }
        }
    }

    private List<int> OrderIn(CpSolver solver)
    {
        var order = new List<int>();
        var at = 0;
        while (true)
        {
            var next = Enumerable
                .Range(0, follows.GetLength(1))
                .FirstOrDefault(to => follows[at, to] is { } arc && solver.BooleanValue(arc));
            if (next == 0)
            {
                // A task that the solver left out may still find a place behind the others.
                order.AddRange(Enumerable.Range(0, problem.Tasks.Count).Except(order).ToList());
                return order;
            }

            order.Add(next - 1);
            at = next;
        }
    }
}
