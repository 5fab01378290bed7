namespace OilCondition.Planning;

/// <summary>Why a visit does not begin on arrival: what would have to go for the earliest begin.</summary>
internal static class Waiting
{
    public static WaitReason ReasonOf(GridProblem problem, GridVisit visit)
    {
        if (visit.Start == visit.Arrive)
        {
            return WaitReason.None;
        }

        var task = problem.Tasks[visit.Task];
        if (visit.Start <= task.Release)
        {
            return WaitReason.EarliestStart;
        }

        var always = problem.Always;
        (WaitReason Reason, Stretches Starts)[] without =
        [
            (WaitReason.Window, task.StartsIn(always, problem.Crew, problem.UnitHours, long.MaxValue)),
            (WaitReason.Crew, task.StartsIn(task.Windows, always, problem.UnitHours, long.MaxValue)),
            (WaitReason.Unit, task.StartsIn(task.Windows, problem.Crew, always, long.MaxValue)),
        ];
        return without.MinBy(one => one.Starts.Earliest(visit.Arrive, 1) ?? long.MaxValue).Reason;
    }
}
