namespace OilCondition.Planning;

/// <summary>Searches with the solver, one total after another, and keeps the best order and what is proven of it.</summary>
internal sealed class PlanSearch
{
    /// <summary>The solver's count of work for each unit of effort: about a quarter of a second of processor time, as measured.</summary>
    private const double SolverWork = 0.1;

    private readonly GridProblem problem;
    private readonly double effort;

    public PlanSearch(GridProblem problem, GridCourse known, double effort)
    {
        this.problem = problem;
        this.effort = effort;
        Best = known;
        var isSmall = problem.Tasks.Count <= OrderEnumeration.AlwaysComplete;
        var bound = new LatenessBound(problem, known, isSmall ? 0 : effort);
        LatenessBound = bound.Value;
        FreeBound = Math.Min(known.Cost.Free, FreeOfLongest());
        if (effort > 0 && (isSmall || (known.Cost.Fits && problem.Tasks.Count <= OrderEnumeration.MostMachines)))
        {
            Enumerate(new OrderEnumeration(problem, known, bound, effort));
        }
    }

    public GridCourse Best { get; private set; }

    public long LatenessBound { get; private set; }

    public long FreeBound { get; private set; }

    /// <summary>Whether it is proven that some task must be left out or some latest end passed.</summary>
    public bool IsShortfallProven { get; private set; }

    /// <summary>Whether all that could be searched was searched.</summary>
    public bool IsSearched { get; private set; }

    /// <summary>Lets the solver go on where something is not proven.</summary>
    public void Run(bool isRelaxed)
    {
        if (IsSearched)
        {
            return;
        }

        try
        {
            Search(isRelaxed);
            IsSearched = true;
        }
        catch (Exception missing)
            when (missing is DllNotFoundException or TypeInitializationException or BadImageFormatException)
        {
            // The solver's native library is not there for every machine; the plan stands without it.
        }
    }

    private void Enumerate(OrderEnumeration orders)
    {
        Best = orders.Best;
        LatenessBound = Math.Min(Best.Cost.Lateness, Math.Max(LatenessBound, orders.LowestDropped));
        IsSearched = orders.LowestDropped > Best.Cost.Lateness;
        FreeBound = IsSearched ? Best.Cost.Free : Math.Min(FreeBound, Best.Cost.Free);
        IsShortfallProven = IsSearched && !Best.Cost.Fits;
    }

    private void Search(bool isRelaxed)
    {
        var model = new SequenceModel(problem, isRelaxed);
        var left = effort * SolverWork;
        var all = left;
        if (isRelaxed)
        {
            var (bound, _) = Minimise(model, model.Shortfall, model.ShortfallOf, all / 2, ref left);
            IsShortfallProven = bound > 0;
        }

        // Lateness of a plan that fits; where some do not, bounds of it would say nothing.
        if (LatenessBound < Best.Cost.Lateness || isRelaxed)
        {
            var (bound, _) = Minimise(model, model.Lateness, cost => cost.Lateness, left * 0.7, ref left);
            LatenessBound = Math.Min(Best.Cost.Lateness, Math.Max(LatenessBound, bound));
        }
        else
        {
            model.Hold(model.Lateness, Best.Cost.Lateness);
        }

        if (FreeBound < Best.Cost.Free)
        {
            var (bound, _) = Minimise(model, model.Free, cost => cost.Free, Math.Min(left, all * 0.3), ref left);
            FreeBound = Math.Min(Best.Cost.Free, Math.Max(FreeBound, bound));
        }
    }

    private (long Bound, double Work) Minimise(
        SequenceModel model,
        Google.OrTools.Sat.LinearExpr total,
        Func<GridCost, long> value,
        double work,
        ref double left
    )
    {
        var (order, bound, used) = model.Minimise(total, value, Best, work);
        left = Math.Max(0, left - used);
        if (order is not null)
        {
            var found = GridCourse.Of(problem, order);
            if (found.Cost.IsBelow(Best.Cost))
            {
                Best = found;
            }
        }

        return (bound, used);
    }

    /// <summary>The unit is free no earlier than after any one visit, nor than after all work and the shortest ways one after another.</summary>
    private long FreeOfLongest() =>
        Math.Max(
            problem.Free
                + Enumerable
                    .Range(0, problem.Tasks.Count)
                    .Sum(task => problem.Tasks[task].Least + problem.ShortestWay(task)),
            Enumerable.Range(0, problem.Tasks.Count).Select(EarliestEnd).DefaultIfEmpty(0).Max()
        );

    private long EarliestEnd(int task)
    {
        var what = problem.Tasks[task];
        return what.Starts.Earliest(problem.Free + problem.ShortestWay(task), 1) is { } start ? start + what.Least : 0;
    }
}
