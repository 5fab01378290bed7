using UnitsNet;

namespace OilCondition.Water;

/// <summary>The water in an oil once it is in equilibrium with water vapour: C = S min(1, p_w / p_sat).</summary>
public sealed record EquilibriumContent
{
    internal EquilibriumContent(SaturationPoint saturation, double activityOfVapour)
    {
        var activity = Math.Min(1, activityOfVapour);
        Saturation = saturation;
        Outcome = activityOfVapour < 1 ? EquilibriumOutcome.Unsaturated : EquilibriumOutcome.Saturated;
        RelativeSaturation = Ratio.FromDecimalFractions(activity);
        Content = MassFraction.FromPartsPerMillion(activity * saturation.Content.PartsPerMillion);
    }

    /// <summary>Whether the vapour leaves the oil below saturation.</summary>
    public EquilibriumOutcome Outcome { get; }

    /// <summary>Dissolved water in equilibrium. The lowest that this vapour allows, and the highest that it brings about.</summary>
    public MassFraction Content { get; }

    /// <summary>Relative saturation in equilibrium, 0 to 1: relative humidity of the vapour at the oil's temperature.</summary>
    public Ratio RelativeSaturation { get; }

    /// <summary>What the oil can hold dissolved at its temperature.</summary>
    public SaturationPoint Saturation { get; }
}
