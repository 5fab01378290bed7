namespace OilCondition.Prognosis;

/// <summary>The chance that one of several limits is the first to be crossed.</summary>
public sealed record LimitShare
{
    internal LimitShare(RemainingLife life, double chance)
    {
        Life = life;
        Chance = chance;
    }

    /// <summary>The forecast against that limit; its series names the measurand.</summary>
    public RemainingLife Life { get; }

    /// <summary>Chance that it is crossed first.</summary>
    public double Chance { get; }
}
