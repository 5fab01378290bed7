namespace OilCondition.Water;

/// <summary>What turns into vapour at a saturation temperature.</summary>
public enum BoilingPhase
{
    /// <summary>Liquid water boils.</summary>
    Liquid,

    /// <summary>Below the triple point, 0.01 °C and 611.657 Pa: liquid water freezes, and ice sublimes.</summary>
    Ice,
}
