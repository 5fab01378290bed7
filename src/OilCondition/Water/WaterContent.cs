using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Water content by mass and by volume, and as an amount of water in an oil fill.</summary>
/// <remarks>
/// ppm(volume) = ppm(mass) ρ_oil / ρ_water.   Karl Fischer methods (ASTM D6304) report mg/kg, which is ppm by mass; 1 % is
/// 10 000 mg/kg. In an oil of 870 kg/m³ the volume figure is 13 % lower: say which one is meant.
/// Water is taken at 20 °C, 998.2 kg/m³ (IAPWS-IF97 gives 998.2 at 1 atm), unless its density is given.
/// </remarks>
/// <example>
/// <code>
/// var litres = WaterContent.VolumeIn(Volume.FromLiters(2000), Density.FromKilogramsPerCubicMeter(870),
///     MassFraction.FromPartsPerMillion(500)).Liters;   // 0.87
/// </code>
/// </example>
public static class WaterContent
{
    /// <summary>Density of water at 20 °C.</summary>
    public static Density WaterDensity { get; } = Density.FromKilogramsPerCubicMeter(998.2);

    /// <summary>Content by mass to content by volume, water at 20 °C.</summary>
    /// <param name="content">Water content by mass, 0 to 500 000 mg/kg.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <returns>Volume of water per volume of oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VolumeConcentration ByVolume(MassFraction content, Density oilDensity) =>
        ByVolume(content, oilDensity, WaterDensity);

    /// <summary>Content by mass to content by volume.</summary>
    /// <param name="content">Water content by mass, 0 to 500 000 mg/kg.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <param name="waterDensity">Density of water at the temperature of interest, 900 to 1050 kg/m³.</param>
    /// <returns>Volume of water per volume of oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VolumeConcentration ByVolume(MassFraction content, Density oilDensity, Density waterDensity) =>
        VolumeConcentration.FromPartsPerMillion(
            PhysicalRange.Water(content) * PhysicalRange.OilDensity(oilDensity) / Water(waterDensity)
        );

    /// <summary>Content by volume to content by mass, water at 20 °C.</summary>
    /// <param name="volumeContent">Volume of water per volume of oil, 0 or more.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <returns>Water content by mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static MassFraction ByMass(VolumeConcentration volumeContent, Density oilDensity) =>
        ByMass(volumeContent, oilDensity, WaterDensity);

    /// <summary>Content by volume to content by mass.</summary>
    /// <param name="volumeContent">Volume of water per volume of oil, 0 or more.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <param name="waterDensity">Density of water at the temperature of interest, 900 to 1050 kg/m³.</param>
    /// <returns>Water content by mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static MassFraction ByMass(VolumeConcentration volumeContent, Density oilDensity, Density waterDensity)
    {
        var ppm = Guard.InRange(volumeContent.PartsPerMillion, 0, 1e6, "ppm by volume", nameof(volumeContent));
        return MassFraction.FromPartsPerMillion(ppm * Water(waterDensity) / PhysicalRange.OilDensity(oilDensity));
    }

    /// <summary>Mass of water in an oil fill.</summary>
    /// <param name="oilMass">Mass of the oil, 0 or more.</param>
    /// <param name="content">Water content by mass, 0 to 500 000 mg/kg.</param>
    /// <returns>Mass of water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative or not finite.</exception>
    public static Mass MassIn(Mass oilMass, MassFraction content) =>
        Mass.FromKilograms(
            Guard.InRange(oilMass.Kilograms, 0, 1e15, "kg", nameof(oilMass)) * PhysicalRange.Water(content) * 1e-6
        );

    /// <summary>Volume of water in an oil fill, water at 20 °C.</summary>
    /// <param name="oilVolume">Volume of the oil, 0 or more.</param>
    /// <param name="oilDensity">Density of the oil at the temperature of that volume, 500 to 1500 kg/m³.</param>
    /// <param name="content">Water content by mass, 0 to 500 000 mg/kg.</param>
    /// <returns>Volume of water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Volume VolumeIn(Volume oilVolume, Density oilDensity, MassFraction content) =>
        VolumeIn(oilVolume, oilDensity, content, WaterDensity);

    /// <summary>Volume of water in an oil fill.</summary>
    /// <param name="oilVolume">Volume of the oil, 0 or more.</param>
    /// <param name="oilDensity">Density of the oil at the temperature of that volume, 500 to 1500 kg/m³.</param>
    /// <param name="content">Water content by mass, 0 to 500 000 mg/kg.</param>
    /// <param name="waterDensity">Density of water at the temperature of interest, 900 to 1050 kg/m³.</param>
    /// <returns>Volume of water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Volume VolumeIn(Volume oilVolume, Density oilDensity, MassFraction content, Density waterDensity)
    {
        var litres = Guard.InRange(oilVolume.Liters, 0, 1e15, "L", nameof(oilVolume));
        return Volume.FromLiters(litres * ByVolume(content, oilDensity, waterDensity).PartsPerMillion * 1e-6);
    }

    private static double Water(Density waterDensity) =>
        Guard.InRange(waterDensity.KilogramsPerCubicMeter, 900, 1050, "kg/m³", nameof(waterDensity));
}
