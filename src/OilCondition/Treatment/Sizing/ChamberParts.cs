using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The same chamber with one thing changed.</summary>
internal static class ChamberParts
{
    /// <summary>The chamber at another pressure, with other air or another pump.</summary>
    public static VacuumChamber With(
        this VacuumChamber chamber,
        Pressure? absolutePressure = null,
        SweepAir? sweep = null,
        VolumeFlow? pumpCapacity = null
    ) =>
        new(
            absolutePressure ?? chamber.AbsolutePressure,
            sweep ?? chamber.Sweep,
            pumpCapacity ?? chamber.PumpCapacity,
            chamber.Condenser
        );
}
