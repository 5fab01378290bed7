using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The same unit with one thing changed.</summary>
internal static class UnitParts
{
    public static PurificationUnit With(
        this PurificationUnit unit,
        VolumeFlow? flow = null,
        Power? heaterPower = null,
        VacuumChamber? chamber = null
    ) =>
        new(
            new PumpViscosityLimit(flow ?? unit.Pump.FullFlow, unit.Pump.HighestViscosity),
            heaterPower ?? unit.HeaterPower,
            unit.ProcessTemperature,
            chamber ?? unit.Chamber,
            unit.RemovalPerPass,
            unit.Filter,
            unit.MotorPower,
            unit.HighestTemperature,
            unit.StartViscosity
        );

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
