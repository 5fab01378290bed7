namespace OilCondition.Statistics;

/// <summary>When first-order loss falls below a limit: the weighted mean over its rates.</summary>
internal sealed class LossLaw
{
    private readonly LossAtRate[] rates;
    private readonly double limit;
    private readonly double lastElapsed;
    private readonly double atStart;

    public LossLaw(LossAtRate[] rates, double limit, double lastElapsed)
    {
        this.rates = rates;
        this.limit = limit;
        this.lastElapsed = lastElapsed;
        atStart = Below(0);
    }

    /// <summary>The chance by a time since the last reading.</summary>
    public double Passed(double time) =>
        atStart < 1 ? Math.Min(1, Math.Max(0, (Below(time) - atStart) / (1 - atStart))) : 0;

    private double Below(double time)
    {
        double chance = 0;
        foreach (var rate in rates)
        {
            chance += rate.Weight * rate.ChanceBelow(limit, lastElapsed + time);
        }

        return chance;
    }
}
