using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>What happens to the water in an oil when its temperature changes.</summary>
/// <remarks>
/// Separated = max(0, free after − free before); redissolvable = max(0, free before − free after), per mass of oil, in equilibrium.
/// Separated water may stay as haze for days; where <see cref="WaterState.Knowledge"/> is
/// <see cref="WaterKnowledge.AtLeast"/>, so is what separates.
/// </remarks>
public sealed record CoolDown
{
    internal CoolDown(WaterState before, WaterState after)
    {
        Before = before;
        After = after;
        var change = after.Free.PartsPerMillion - before.Free.PartsPerMillion;
        Separated = MassFraction.FromPartsPerMillion(Math.Max(0, change));
        Redissolvable = MassFraction.FromPartsPerMillion(Math.Max(0, -change));
    }

    /// <summary>The water before.</summary>
    public WaterState Before { get; }

    /// <summary>The water after.</summary>
    public WaterState After { get; }

    /// <summary>Dissolved water that falls out, per mass of oil.</summary>
    public MassFraction Separated { get; }

    /// <summary>Free water that can go back into solution, per mass of oil.</summary>
    public MassFraction Redissolvable { get; }

    /// <summary>A temperature change between two saturations of one oil, for example the two ends of a band.</summary>
    /// <param name="from">Saturation at the temperature before.</param>
    /// <param name="to">Saturation at the temperature after.</param>
    /// <param name="total">All water in the oil, 0 to 500 000 mg/kg.</param>
    /// <returns>What separates or may redissolve.</returns>
    /// <exception cref="ArgumentNullException">A saturation is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The total lies outside its range.</exception>
    public static CoolDown Between(SaturationPoint from, SaturationPoint to, MassFraction total) =>
        new(Guard.NotNull(from).Split(total), Guard.NotNull(to).Split(total));

    /// <summary>Mass of water that falls out of an oil fill.</summary>
    /// <param name="oilMass">Mass of the oil, 0 or more.</param>
    /// <returns>Mass of water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is negative or not finite.</exception>
    public Mass SeparatedMass(Mass oilMass) => WaterContent.MassIn(oilMass, Separated);

    /// <summary>Volume of water, at 20 °C, that falls out of an oil fill.</summary>
    /// <param name="oilVolume">Volume of the oil, 0 or more.</param>
    /// <param name="oilDensity">Density of the oil at the temperature of that volume, 500 to 1500 kg/m³.</param>
    /// <returns>Volume of water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The volume is negative or not finite, or the density lies outside its range.</exception>
    public Volume SeparatedVolume(Volume oilVolume, Density oilDensity) =>
        WaterContent.VolumeIn(oilVolume, oilDensity, Separated);

    /// <summary>What happens, in one line.</summary>
    /// <returns>For example <c>60 to 12 °C: 110 mg/kg separates</c>.</returns>
    public override string ToString()
    {
        string Number(MassFraction content) =>
            PlainText.Number(content.PartsPerMillion, Before.Total.PartsPerMillion / 10);
        var least = After.Knowledge == WaterKnowledge.AtLeast ? "at least " : "";
        var words =
            Separated.PartsPerMillion > 0 ? $"{least}{Number(Separated)} mg/kg separates"
            : Redissolvable.PartsPerMillion > 0 ? $"{Number(Redissolvable)} mg/kg can go back into solution"
            : "nothing separates";
        return $"{PlainText.Tenths(Before.Saturation.Temperature.DegreesCelsius)} to {PlainText.Tenths(After.Saturation.Temperature.DegreesCelsius)} °C: {words}";
    }
}
