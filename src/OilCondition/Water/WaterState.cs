using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>The water in an oil at one temperature, split into what is dissolved and what is free.</summary>
/// <remarks>
/// Dissolved = min(total, S); free = max(0, total − S); headroom = max(0, S − total), with S the content at saturation.
/// Free includes emulsified water: solubility alone cannot tell the two apart.
/// <see cref="Knowledge"/> says whether the total was measured or is only what a sensor implies.
/// </remarks>
public sealed record WaterState
{
    /// <summary>What relative saturation is good to, as a sensor or a titration gives it, in per cent (common practice, no source).</summary>
    private const double PercentUncertainty = 2;

    internal WaterState(MassFraction total, SaturationPoint saturation, WaterKnowledge knowledge)
    {
        var totalPpm = total.PartsPerMillion;
        var saturationPpm = saturation.Content.PartsPerMillion;
        Total = total;
        Saturation = saturation;
        Knowledge = knowledge;
        Dissolved = MassFraction.FromPartsPerMillion(Math.Min(totalPpm, saturationPpm));
        Free = MassFraction.FromPartsPerMillion(Math.Max(0, totalPpm - saturationPpm));
        Headroom = MassFraction.FromPartsPerMillion(Math.Max(0, saturationPpm - totalPpm));
        RelativeSaturation = Ratio.FromDecimalFractions(Math.Min(1, totalPpm / saturationPpm));
    }

    /// <summary>All water: as a Karl Fischer titration sees it, or as a sensor implies it (<see cref="Knowledge"/>).</summary>
    public MassFraction Total { get; }

    /// <summary>What the oil can hold dissolved at this temperature.</summary>
    public SaturationPoint Saturation { get; }

    /// <summary>Whether the total is measured, implied by a sensor, or only a least amount.</summary>
    public WaterKnowledge Knowledge { get; }

    /// <summary>Water in solution.</summary>
    public MassFraction Dissolved { get; }

    /// <summary>Water beyond saturation, free or emulsified.</summary>
    public MassFraction Free { get; }

    /// <summary>Water that the oil could still take up before it is saturated.</summary>
    public MassFraction Headroom { get; }

    /// <summary>Dissolved water over saturation, 0 to 1; what a moisture sensor reads. It is 1 whenever free water is present.</summary>
    public Ratio RelativeSaturation { get; }

    /// <summary>Whether there is free or emulsified water, as far as the figures know.</summary>
    public bool HasFreeWater => Free.PartsPerMillion > 0;

    /// <summary>The water in one line, with as many digits as a titration or a sensor bears: some tenth of the figure (common practice, no source).</summary>
    /// <returns>For example <c>180 mg/kg at 12 °C: 70 dissolved, 110 free</c>.</returns>
    public override string ToString()
    {
        string Number(MassFraction content) => PlainText.Number(content.PartsPerMillion, Total.PartsPerMillion / 10);
        var water = $"{Number(Total)} mg/kg at {PlainText.Tenths(Saturation.Temperature.DegreesCelsius)} °C";
        var words = Knowledge switch
        {
            WaterKnowledge.AtLeast when HasFreeWater =>
                $"at least {water}: {Number(Dissolved)} dissolved, {Number(Free)} free",
            WaterKnowledge.AtLeast => $"at least {water}, saturated",
            _ when HasFreeWater => $"{water}: {Number(Dissolved)} dissolved, {Number(Free)} free",
            _ =>
                $"{water}, dissolved, {PlainText.Number(RelativeSaturation.Percent, PercentUncertainty)} % of saturation",
        };
        return words + (Saturation.IsExtrapolated ? ", extrapolated" : "");
    }
}
