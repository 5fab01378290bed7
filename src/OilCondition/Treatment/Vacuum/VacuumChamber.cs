using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The vacuum side of a purifier: the pressure that it holds, the air let in, the pump's capacity, the condenser.</summary>
/// <remarks>
/// p = max(p_set, n R T / Q_pump): when more vapour and air come than the pump swallows, the pressure rises until it does. Before the pump a condenser
/// takes out vapour down to p_sat(T_condenser). Ideal gases; the pump's capacity is taken as the same at every pressure.
/// A gauge vacuum goes in as <see cref="GaugeVacuum.AbsolutePressure"/>, which needs the local atmosphere.
/// </remarks>
public sealed class VacuumChamber
{
    internal const double GasConstant = 8.314462618;
    internal const double WaterKilogramPerMole = 0.018015;
    internal const double AirKilogramPerMole = 0.028965;

    /// <summary>No oil in the chamber is hotter than this; the pump must carry the sweep air even then.</summary>
    private const double HottestKelvins = 423.15;

    /// <summary>Describes the vacuum side.</summary>
    /// <param name="absolutePressure">Absolute pressure that is set, 10 Pa to 110 kPa.</param>
    /// <param name="sweep">Sweep and leak air; null for none.</param>
    /// <param name="pumpCapacity">Gas that the vacuum pump swallows at its inlet, above 0; null for one that always holds the pressure.</param>
    /// <param name="condenser">The condenser; null where all vapour leaves with the exhaust.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range, or the pump cannot even carry the sweep air.</exception>
    public VacuumChamber(
        Pressure absolutePressure,
        SweepAir? sweep = null,
        VolumeFlow? pumpCapacity = null,
        VapourCondenser? condenser = null
    )
    {
        Guard.InRange(absolutePressure.Pascals, 10, 110_000, "Pa", nameof(absolutePressure));
        AbsolutePressure = absolutePressure;
        Sweep = sweep ?? SweepAir.None;
        Condenser = condenser;
        PumpCapacity = pumpCapacity;
        if (pumpCapacity is { } capacity)
        {
            var least = Math.Max(1e-6, LeastCapacityFor(Sweep));
            Guard.InRange(capacity.CubicMetersPerHour, least, 1e9, "m³/h, with this sweep air", nameof(pumpCapacity));
        }
    }

    /// <summary>Absolute pressure that is set.</summary>
    public Pressure AbsolutePressure { get; }

    /// <summary>Sweep and leak air.</summary>
    public SweepAir Sweep { get; }

    /// <summary>Gas that the vacuum pump swallows at its inlet; null for one that always holds the pressure.</summary>
    public VolumeFlow? PumpCapacity { get; }

    /// <summary>The condenser, or null.</summary>
    public VapourCondenser? Condenser { get; }

    /// <summary>Whether the vacuum pump could carry another sweep.</summary>
    internal bool CanCarry(SweepAir sweep) =>
        PumpCapacity is not { } capacity || capacity.CubicMetersPerHour >= LeastCapacityFor(sweep);

    /// <summary>Volume flow of the air, hot and at the highest pressure that a chamber may have, m³/h.</summary>
    private static double LeastCapacityFor(SweepAir sweep) =>
        (
            sweep.DryAir.KilogramsPerSecond / AirKilogramPerMole
            + sweep.Moisture.KilogramsPerSecond / WaterKilogramPerMole
        )
        * GasConstant
        * HottestKelvins
        / 110_000
        * 3600;
}
