using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>When a first-order course gets to a value.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CourseTime
{
    internal CourseTime(CourseOutcome outcome, double time)
    {
        Outcome = outcome;
        Time = time;
    }

    /// <summary>Whether it gets there.</summary>
    public CourseOutcome Outcome { get; }

    /// <summary>Time from the start; 0 unless <see cref="CourseOutcome.Reached"/>.</summary>
    public double Time { get; }
}
