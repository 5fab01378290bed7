using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>A figure derived from a cleanup curve, with an interval; an end that the readings do not bound is null.</summary>
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
        bool coverageInDoubt,
        bool isExtrapolated
    )
    {
        Outcome = outcome;
        Method = method;
        Estimate = estimate;
        Lower = lower;
        Upper = upper;
        Confidence = confidence;
        CoverageInDoubt = coverageInDoubt;
        IsExtrapolated = isExtrapolated;
    }

    /// <summary>The figure of the best curve; null without one: a rate at a limit of the search is none.</summary>
    public T? Estimate { get; }

    /// <summary>Lower end; null where the readings do not bound it.</summary>
    public T? Lower { get; }

    /// <summary>Upper end; null where the readings do not bound it.</summary>
    public T? Upper { get; }

    /// <summary>Two-sided confidence level.</summary>
    public double Confidence { get; }

    /// <summary>Whether the residuals follow one another so closely that the interval covers less often than it says.</summary>
    public bool CoverageInDoubt { get; }

    /// <summary>Whether a moment asked for lies after the last reading.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>What became of the ends.</summary>
    internal CleanupFigureOutcome Outcome { get; }

    /// <summary>How the interval is made.</summary>
    internal CleanupFigureMethod Method { get; }

    /// <summary>Estimate and interval.</summary>
    /// <returns>For example <c>1.19 L (1.15 to 1.24)</c>.</returns>
    public override string ToString()
    {
        if (Estimate is not { } estimate)
        {
            return "not determined";
        }

        // Figures here are of litres, shares, contents and flows of water, printed in the units in which people say them.
        var (value, unit) = Said(estimate);
        var lower = Lower is { } from ? PlainText.Number(Said(from).Value) : "not bounded";
        var upper = Upper is { } to ? PlainText.Number(Said(to).Value) : "not bounded";
        var text = PlainText.Number(value);
        var figure = unit.Length == 0 ? text : $"{text} {unit}";
        return lower == text && upper == text ? figure : $"{figure} ({lower} to {upper})";
    }

    private static (double Value, string Unit) Said(T figure) =>
        figure switch
        {
            Volume volume => (volume.Liters, "L"),
            MassFlow flow => (flow.GramsPerHour, "g/h"),
            MassFraction content => (content.PartsPerMillion, "mg/kg"),
            Ratio share => (share.Percent, "%"),
            double number => (number, ""),
            _ => throw new InvalidOperationException($"A figure of {typeof(T).Name} has no unit to be printed in."),
        };
}
