using OilCondition.Text;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The limits of an oil circuit that its maker states, or else common practice.</summary>
internal static class CircuitLimits
{
    public static TemperatureDelta Rise(TemperatureDelta? stated, string name)
    {
        var rise = stated ?? TemperatureDelta.FromKelvins(OilCircuit.CommonRiseKelvins);
        Guard.InRange(rise.Kelvins, 0.1, 150, "K", name);
        return rise;
    }

    public static KinematicViscosity Start(KinematicViscosity? stated, PumpViscosityLimit pump, string name)
    {
        var least = pump.HighestViscosity.Centistokes;
        var start = stated?.Centistokes ?? Math.Max(OilCircuit.CommonStartCentistokes, least);
        return KinematicViscosity.FromCentistokes(Guard.InRange(start, least, 2e7, "mm²/s", name));
    }
}
