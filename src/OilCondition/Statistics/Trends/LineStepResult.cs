using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The likeliest step on a line. The default value says that no place could be tried: fewer than six readings, or too few different times.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LineStepResult
{
    private readonly double chance;

    internal LineStepResult(
        int firstAfter,
        double step,
        double pValue,
        double correlation,
        double lowering,
        double left
    )
    {
        IsTried = true;
        FirstAfter = firstAfter;
        Step = step;
        chance = pValue;
        Correlation = correlation;
        Lowering = lowering;
        Left = left;
    }

    /// <summary>Whether any place could be tried. The other members are meaningful only if so.</summary>
    public bool IsTried { get; }

    /// <summary>Index, from 0, of the first reading after the step.</summary>
    public int FirstAfter { get; }

    /// <summary>Size of the step, after less before, in the unit of the values.</summary>
    public double Step { get; }

    /// <summary>Upper bound of the probability of so clear a step by chance alone, at most 1.</summary>
    public double PValue => IsTried ? chance : 1;

    /// <summary>Lag-1 correlation of the residuals that was allowed for, 0 or more.</summary>
    public double Correlation { get; }

    /// <summary>How far it lowers the residual sum of squares of the line.</summary>
    public double Lowering { get; }

    /// <summary>Residual sum of squares beside the step and its line.</summary>
    public double Left { get; }
}
