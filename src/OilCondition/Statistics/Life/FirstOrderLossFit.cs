using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>First-order loss with make-up, fitted; every rate that the readings allow, with its weight.</summary>
internal sealed class FirstOrderLossFit
{
    private readonly LossAtRate[] rates;
    private readonly double span;

    internal FirstOrderLossFit(int count, double span, double newValue, double makeUpRate, LossAtRate[] rates)
    {
        Count = count;
        this.span = span;
        NewValue = newValue;
        MakeUpRate = makeUpRate;
        this.rates = rates;
    }

    /// <summary>Whether there are enough readings at different times. The other members are meaningful only if there are.</summary>
    public bool IsDetermined => rates.Length > 0;

    /// <summary>Number of readings, n.</summary>
    public int Count { get; }

    /// <summary>Value of new oil, A0.</summary>
    public double NewValue { get; }

    /// <summary>Make-up per time as a fraction of the charge, m.</summary>
    public double MakeUpRate { get; }

    /// <summary>Mean rate of loss, k, per time.</summary>
    public double LossRate => rates.Sum(rate => rate.Weight * rate.LossRate);

    /// <summary>Standard deviation of the rate of loss.</summary>
    public double LossRateStandardError
    {
        get
        {
            var mean = LossRate;
            return Math.Sqrt(rates.Sum(rate => rate.Weight * (rate.LossRate - mean) * (rate.LossRate - mean)));
        }
    }

    /// <summary>Mean value at the first reading.</summary>
    public double Start => rates.Sum(rate => rate.Weight * rate.Start);

    /// <summary>The course at the mean rate and start, from the first reading.</summary>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public FirstOrderCourse Course
    {
        get
        {
            RequireDetermined();
            return FirstOrderCourse.WithMakeUp(Start, NewValue, LossRate, MakeUpRate);
        }
    }

    /// <summary>The chance that the value ever falls below a limit: that make-up does not hold it.</summary>
    /// <param name="limit">The limit.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite.</exception>
    public double ChanceEverBelow(double limit)
    {
        Guard.Finite(limit, "");
        return Math.Min(
            1,
            rates.Where(rate => rate.LossRate + MakeUpRate > 0 && rate.LongRun < limit).Sum(rate => rate.Weight)
        );
    }

    /// <summary>When the value falls below a limit.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="latest">How far to look, in time since the last reading.</param>
    /// <returns>The law, in time since the last reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite.</exception>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public CrossingLaw Below(double limit, double latest)
    {
        RequireDetermined();
        return CrossingLaw.Of(new LossLaw(rates, Guard.Finite(limit, ""), span).Passed, latest);
    }

    private void RequireDetermined()
    {
        if (!IsDetermined)
        {
            throw new InvalidOperationException($"The fit is not determined: {Count} readings.");
        }
    }
}
