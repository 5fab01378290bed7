namespace OilCondition.Statistics;

/// <summary>The scale on which values scatter evenly.</summary>
public enum ValueScale
{
    /// <summary>As read: acid number, viscosity, temperature.</summary>
    Natural,

    /// <summary>Natural logarithms: particle counts, wear metals, anything skewed whose scatter grows with its size. Values must be above 0.</summary>
    Logarithmic,
}
