using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>How a plan is made.</summary>
public sealed class SchedulingOptions
{
    /// <summary>States the options.</summary>
    /// <param name="asOf">Now: nothing is planned before it. Its offset is the one in which the plan is written.</param>
    /// <param name="step">Step of the time grid, 1 minute to 24 h; 15 minutes unless stated.</param>
    /// <param name="effort">
    /// How long to search, counted by work and not by the clock, 0 to 10 000: about seconds of one core, and the same on every machine.
    /// 10 unless stated; 0 takes the better rule's plan as it is.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public SchedulingOptions(DateTimeOffset asOf, TimeSpan? step = null, double effort = 10)
    {
        AsOf = Guard.Moment(asOf);
        Step = step ?? TimeSpan.FromMinutes(15);
        Guard.InRange(Step.TotalMinutes, 1, 1440, "min", nameof(step));
        Effort = Guard.InRange(effort, 0, 10_000, "");
    }

    /// <summary>Now: nothing is planned before it.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>Step of the time grid.</summary>
    public TimeSpan Step { get; }

    /// <summary>How long to search, counted by work: about seconds of one core.</summary>
    public double Effort { get; }
}
