namespace OilCondition.Prognosis;

/// <summary>The moment by which a limit has been crossed with a stated chance.</summary>
public sealed record LifeQuantile
{
    internal LifeQuantile(double chance, DateTimeOffset at)
    {
        Chance = chance;
        At = at;
    }

    /// <summary>Chance that the limit has been crossed by then, given that it is not crossed now.</summary>
    public double Chance { get; }

    /// <summary>The moment.</summary>
    public DateTimeOffset At { get; }
}
