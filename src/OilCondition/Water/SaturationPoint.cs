using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>The water that an oil holds dissolved, at most, at one temperature.</summary>
/// <remarks>
/// All that follows from a saturation at one temperature can be asked here, so that the ends of a <see cref="Band{T}"/>
/// answer the same questions as the curve itself.
/// </remarks>
public sealed record SaturationPoint
{
    internal SaturationPoint(Temperature temperature, MassFraction content, bool isExtrapolated, Source source)
    {
        Temperature = temperature;
        Content = content;
        IsExtrapolated = isExtrapolated;
        Source = source;
    }

    /// <summary>Oil temperature.</summary>
    public Temperature Temperature { get; }

    /// <summary>Dissolved water at saturation, mass of water per mass of oil.</summary>
    public MassFraction Content { get; }

    /// <summary>Whether the temperature lies outside the range in which the curve was measured or published.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Where the curve behind it comes from.</summary>
    public Source Source { get; }

    /// <summary>Splits a known total of water into dissolved and free.</summary>
    /// <param name="total">All water in the oil, as a Karl Fischer titration gives it; 0 to 500 000 mg/kg.</param>
    /// <returns>The split.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The total lies outside its range.</exception>
    public WaterState Split(MassFraction total)
    {
        PhysicalRange.Water(total);
        return new WaterState(total, this, WaterKnowledge.Total);
    }

    /// <summary>Water in the oil once it is in equilibrium with water vapour of a given partial pressure.</summary>
    /// <remarks>C = S(T) min(1, p_w / p_sat(T)); below the triple point p_sat is that of ice.</remarks>
    /// <param name="vapourPressure">Partial pressure of water vapour over the oil, p_w; 0 or more.</param>
    /// <returns>The dissolved water; where water condenses into the oil, it is saturated and holds at least that.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is negative or not finite.</exception>
    public WaterState EquilibriumWith(Pressure vapourPressure)
    {
        var pascal = Guard.NotNegative(vapourPressure.Pascals, "Pa", nameof(vapourPressure));
        var activity = pascal / WaterVapour.SaturationPressure(Temperature).Pascals;
        return new WaterState(
            MassFraction.FromPartsPerMillion(Math.Min(1, activity) * Content.PartsPerMillion),
            this,
            activity < 1 ? WaterKnowledge.Dissolved : WaterKnowledge.AtLeast
        );
    }

    /// <summary>The saturation in one line.</summary>
    /// <returns>For example <c>243 mg/kg at 60 °C</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Content.PartsPerMillion)} mg/kg at {PlainText.Tenths(Temperature.DegreesCelsius)} °C"
        + (IsExtrapolated ? ", extrapolated" : "");
}
