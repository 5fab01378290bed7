namespace OilCondition.Charts.Drawing;

/// <summary>A unit as it is shown, and how figures become it.</summary>
/// <param name="Unit">The unit; empty for none.</param>
/// <param name="Factor">What a figure is multiplied by.</param>
/// <param name="Zero">What is added then.</param>
internal readonly record struct Shown(string Unit, double Factor = 1, double Zero = 0)
{
    /// <summary>The unit of a measurand, or what stands for it in the United States (NIST SP 811, 2008, appendix B: exact definitions of gallon and pound).</summary>
    public static Shown Of(string unit, ChartUnits units) =>
        units == ChartUnits.Si
            ? new Shown(unit)
            : unit switch
            {
                "°C" => new Shown("°F", 1.8, 32),
                "L" => new Shown("gal", 1 / 3.785411784),
                "kg/m³" => new Shown("lb/gal", 3.785411784e-3 / 0.45359237),
                _ => new Shown(unit),
            };

    public double From(double figure) => figure * Factor + Zero;

    /// <summary>A figure with its unit.</summary>
    public string Text(ChartTexts texts, string number) => Unit.Length == 0 ? number : $"{number} {texts.Name(Unit)}";

    /// <summary>A figure of the measurand's unit, in the unit that is shown.</summary>
    public string Text(ChartTexts texts, double figure) => Text(texts, texts.Number(From(figure)));
}
