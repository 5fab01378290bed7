namespace OilCondition.Statistics;

/// <summary>A law whose clock runs faster or slower from a time on.</summary>
internal sealed class AgedLaw : CrossingLaw
{
    private readonly CrossingLaw law;
    private readonly double since;
    private readonly double acceleration;

    public AgedLaw(CrossingLaw law, double since, double acceleration)
    {
        this.law = law;
        this.since = since;
        this.acceleration = acceleration;
    }

    private protected override double Passed(double time) =>
        law.ChanceBefore(time <= since ? time : Math.Min(double.MaxValue, since + (time - since) * acceleration));
}
