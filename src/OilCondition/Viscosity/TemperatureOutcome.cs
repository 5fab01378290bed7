namespace OilCondition.Viscosity;

/// <summary>Whether an oil has a viscosity at a temperature within −60 to 200 °C.</summary>
public enum TemperatureOutcome
{
    /// <summary>At the temperature stated.</summary>
    Found,

    /// <summary>Only below −60 °C: the oil is thinner than this over the whole range. The temperature stated is −60 °C.</summary>
    ColderThanRange,

    /// <summary>Only above 200 °C: the oil is thicker than this over the whole range. The temperature stated is 200 °C.</summary>
    HotterThanRange,
}
