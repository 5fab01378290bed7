namespace OilCondition.Charts;

/// <summary>In which units a chart shows its figures.</summary>
public enum ChartUnits
{
    /// <summary>The units of the measurands: °C, L, kg/m³, mg/kg.</summary>
    Si,

    /// <summary>°F, US gallons and lb/gal where the trade in the United States uses them; mg/kg, mm²/s and counts per mL stay, as they do there.</summary>
    UsCustomary,
}
