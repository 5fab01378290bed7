namespace OilCondition.Statistics;

/// <summary>The failure of a unit of an age after a fitted Weibull distribution.</summary>
internal sealed class WeibullLaw : CrossingLaw
{
    private readonly WeibullFit fit;
    private readonly double age;

    public WeibullLaw(WeibullFit fit, double age)
    {
        this.fit = fit;
        this.age = age;
    }

    private protected override double Passed(double time) => 1 - fit.ConditionalReliability(age, time);
}
