namespace OilCondition.Charts.Drawing;

/// <summary>How a line is drawn.</summary>
internal enum Dash
{
    Solid,
    Long,
    Short,
    Dots,
}
