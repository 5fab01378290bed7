namespace OilCondition.Water;

/// <summary>What the figures of a <see cref="WaterState"/> know. A titration sees all water, a sensor only what is dissolved.</summary>
public enum WaterKnowledge
{
    /// <summary>The total is known, as from a Karl Fischer titration.</summary>
    Total,

    /// <summary>
    /// Dissolved water is known from a sensor below saturation. The total equals it as far as the oil at the sensor is in
    /// equilibrium; free water that lies elsewhere or has had no time to dissolve is not seen. So it is with an oil in equilibrium with humid air.
    /// </summary>
    Dissolved,

    /// <summary>The sensor was at saturation, or water condenses into the oil: total, dissolved and free are the least amounts, headroom is the largest.</summary>
    AtLeast,
}
