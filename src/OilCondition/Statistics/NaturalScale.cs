namespace OilCondition;

/// <summary>The scale on which a measurand's scatter and growth are even.</summary>
public enum NaturalScale
{
    /// <summary>Differences count.</summary>
    Linear,

    /// <summary>Ratios count, as with particle counts and wear metals; values must be above 0.</summary>
    Logarithmic,
}
