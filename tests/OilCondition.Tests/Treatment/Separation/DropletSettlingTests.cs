using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Separation;

/// <summary>How fast a drop sinks.</summary>
public class DropletSettlingTests
{
    /// <summary>
    /// By hand, 100 µm in VG 46 at 40 °C: oil 854.22 kg/m³ (heat.csv, Table 54D), water 992.2 kg/m³ (steam tables), so
    /// v = 9.80665 × 1e-8 × 138.0 / (18 × 854.22 × 46e-6) = 1.913e-5 m/s, 69 mm an hour.
    /// </summary>
    [Fact]
    public void A_drop_sinks_as_stokes_says()
    {
        var drop = DropletSettling.In(Sump.Oil(), Sump.Celsius(40), Kit.Micrometres(100));
        drop.DensityDifference.KilogramsPerCubicMeter.ShouldBe(138.0, 0.2);
        drop.Velocity.MetersPerSecond.ShouldBe(1.913e-5, 0.004e-5);
        drop.Reynolds.ShouldBe(1.913e-5 * 1e-4 / 46e-6, 1e-7);
        drop.IsOutsideRange.ShouldBeFalse();
        DropletSettling
            .In(Sump.Oil(), Sump.Celsius(40), Kit.Micrometres(200))
            .Velocity.MetersPerSecond.ShouldBe(7.652e-5, 0.02e-5);
        DropletSettling.In(Sump.Oil(), Sump.Celsius(40), Kit.Micrometres(2000)).IsOutsideRange.ShouldBeTrue();
    }
}
