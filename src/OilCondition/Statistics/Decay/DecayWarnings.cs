using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>What makes every interval of a fit cover less often than it says.</summary>
/// <param name="LagOneDeviate">Lag-1 correlation of the residuals less what independent scatter would show, in its standard deviations.</param>
/// <param name="Course">The check of the course.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DecayWarnings(double LagOneDeviate, CourseChances Course)
{
    /// <summary>Of too few readings.</summary>
    public static DecayWarnings None { get; } = new(0, CourseChances.Untested);

    public bool IsAutocorrelated => SerialCorrelation.IsClear(LagOneDeviate);

    public bool CoverageInDoubt => IsAutocorrelated || Course.AreContradicted;

    /// <summary>Of a fit to working values and weights in order of time.</summary>
    /// <param name="times">Times.</param>
    /// <param name="values">Working values.</param>
    /// <param name="weights">Working weights; none are equal ones.</param>
    /// <param name="fit">The fit, of enough readings.</param>
    /// <param name="options">What was known.</param>
    /// <param name="shares">What it learned of a scatter of two components; null with any other.</param>
    /// <param name="store">Memory to work in.</param>
    public static DecayWarnings Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in ExponentialDecay fit,
        ExponentialDecayOptions options,
        DecayShares? shares,
        DecayStore store
    )
    {
        var design = DecayDesign.Of(times, values, weights, fit, options, store);
        return new DecayWarnings(
            design.LagOneDeviate,
            shares?.Course ?? design.Course(fit.Status, fit.Start >= fit.Floor)
        );
    }
}
