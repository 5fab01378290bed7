namespace OilCondition.Cleanliness;

/// <summary>How long a kidney loop takes to a target at one size of a code.</summary>
public sealed record KidneyLoopSizeTime
{
    internal KidneyLoopSizeTime(CodeSize size, KidneyLoopTime time, double steadyOverLimit)
    {
        Size = size;
        Time = time;
        SteadyOverLimit = steadyOverLimit;
    }

    /// <summary>The size.</summary>
    public CodeSize Size { get; }

    /// <summary>Outcome, time and turnovers.</summary>
    public KidneyLoopTime Time { get; }

    /// <summary>The steady state over the limit of the target; at 1 and above the target is never reached from above.</summary>
    public double SteadyOverLimit { get; }
}
