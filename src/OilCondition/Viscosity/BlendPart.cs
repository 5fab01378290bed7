using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>One part of a blend: its share by volume and its viscosity against temperature.</summary>
public sealed class BlendPart
{
    /// <summary>States a part.</summary>
    /// <param name="volumeFraction">Share of the blend by volume, 0 to 1.</param>
    /// <param name="line">Viscosity of the part against temperature.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share lies outside 0 to 1.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    public BlendPart(Ratio volumeFraction, ViscosityTemperatureLine line)
    {
        Guard.InRange(volumeFraction.DecimalFractions, 0, 1, "", nameof(volumeFraction));
        VolumeFraction = volumeFraction;
        Line = Guard.NotNull(line);
    }

    /// <summary>Share of the blend by volume.</summary>
    public Ratio VolumeFraction { get; }

    /// <summary>Viscosity of the part against temperature.</summary>
    public ViscosityTemperatureLine Line { get; }
}
