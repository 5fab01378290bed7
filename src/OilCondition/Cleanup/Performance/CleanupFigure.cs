using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>A figure derived from a cleanup curve, with an interval whose ends may be missing for a named reason.</summary>
/// <remarks>Plant data that are stated (volume, flow, density, a floor) are taken as exact: their own errors come on top.</remarks>
/// <typeparam name="T">The quantity, or a number whose unit the method that gives it names.</typeparam>
public sealed class CleanupFigure<T>
    where T : struct
{
    internal CleanupFigure(
        CleanupFigureOutcome outcome,
        CleanupFigureMethod method,
        T? estimate,
        T? lower,
        T? upper,
        double confidence,
        IntervalSide side,
        bool coverageInDoubt,
        bool isExtrapolated
    )
    {
        Outcome = outcome;
        Method = method;
        HasEstimate = estimate.HasValue;
        Estimate = estimate.GetValueOrDefault();
        HasLower = lower.HasValue;
        Lower = lower.GetValueOrDefault();
        HasUpper = upper.HasValue;
        Upper = upper.GetValueOrDefault();
        Confidence = confidence;
        Side = side;
        CoverageInDoubt = coverageInDoubt;
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>What became of the ends.</summary>
    public CleanupFigureOutcome Outcome { get; }

    /// <summary>How the interval is made.</summary>
    public CleanupFigureMethod Method { get; }

    /// <summary>Whether the best curve has an estimate: a rate at a limit of the search is none.</summary>
    public bool HasEstimate { get; }

    /// <summary>The figure of the best curve; zero without one.</summary>
    public T Estimate { get; }

    /// <summary>Whether there is a lower end.</summary>
    public bool HasLower { get; }

    /// <summary>Lower end; zero where there is none.</summary>
    public T Lower { get; }

    /// <summary>Whether there is an upper end.</summary>
    public bool HasUpper { get; }

    /// <summary>Upper end; zero where there is none.</summary>
    public T Upper { get; }

    /// <summary>Confidence level.</summary>
    public double Confidence { get; }

    /// <summary>Which ends were asked for.</summary>
    public IntervalSide Side { get; }

    /// <summary>Whether the residuals follow one another so closely that the interval covers less often than it says.</summary>
    public bool CoverageInDoubt { get; }

    /// <summary>Whether a moment asked for lies after the last reading.</summary>
    public bool IsExtrapolated { get; }
}
