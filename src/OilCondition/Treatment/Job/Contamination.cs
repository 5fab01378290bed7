using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What is in the oil before the treatment.</summary>
/// <remarks>
/// Free water is what lies above saturation. The emulsified share of it is drops so small, or so held by additives and dirt, that they do not settle
/// or coalesce: a demulsibility test or a jar left standing tells it. Gas is left out: vacuum takes it out along with the water.
/// </remarks>
public sealed record Contamination
{
    /// <summary>States the contamination.</summary>
    /// <param name="water">All water, as a titration gives it, 0 to 500 000 mg/kg.</param>
    /// <param name="emulsifiedShare">Share of the water above saturation that is emulsified, 0 to 1.</param>
    /// <param name="particles">Particle counts.</param>
    /// <exception cref="ArgumentNullException">The counts are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public Contamination(MassFraction water, Ratio emulsifiedShare, ParticleLevels particles)
    {
        PhysicalRange.Water(water);
        Guard.InRange(emulsifiedShare.DecimalFractions, 0, 1, "(ratio)", nameof(emulsifiedShare));
        Water = water;
        EmulsifiedShare = emulsifiedShare;
        Particles = Guard.NotNull(particles);
    }

    /// <summary>All water.</summary>
    public MassFraction Water { get; }

    /// <summary>Share of the water above saturation that is emulsified.</summary>
    public Ratio EmulsifiedShare { get; }

    /// <summary>Particle counts.</summary>
    public ParticleLevels Particles { get; }

    /// <summary>The contamination in a few words.</summary>
    /// <returns>For example <c>1500 mg/kg of water, 20 % of the free water emulsified, 20/18/15</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Water.PartsPerMillion)} mg/kg of water, "
        + (
            EmulsifiedShare.DecimalFractions > 0
                ? $"{PlainText.Number(EmulsifiedShare.Percent)} % of the free water emulsified, "
                : ""
        )
        + Particles.Code;
}
