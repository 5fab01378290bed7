namespace OilCondition.Planning;

/// <summary>What a plan costs, in the order in which it counts: tasks left out, steps past latest ends, weighted lateness, when the unit is free.</summary>
internal readonly record struct GridCost(int LeftOut, long Overshoot, long Lateness, long Free)
{
    public bool Fits => LeftOut == 0 && Overshoot == 0;

    public bool IsBelow(GridCost other) =>
        (LeftOut, Overshoot, Lateness, Free).CompareTo((other.LeftOut, other.Overshoot, other.Lateness, other.Free))
        < 0;
}
