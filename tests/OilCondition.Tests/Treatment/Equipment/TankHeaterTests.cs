using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Equipment;

/// <summary>Guide figures are the lower ends of public guides; heat-up is the closed form of a tank that loses heat.</summary>
public class TankHeaterTests
{
    private static readonly TankHeater Heater = new(Power.FromKilowatts(9), Area.FromSquareMeters(0.3));

    [Theory]
    [InlineData(46, 3.1)]
    [InlineData(100, 3.1)]
    [InlineData(320, 1.9)]
    [InlineData(1000, 0.9)]
    [InlineData(5000, 0.7)]
    public void The_guide_gives_thick_oil_less(double centistokes, double wattPerSquareCentimetre) =>
        TankHeater
            .HighestWattDensity(KinematicViscosity.FromCentistokes(centistokes))
            .WattsPerSquareMeter.ShouldBe(1e4 * wattPerSquareCentimetre, 1e-6);

    /// <summary>9 kW on 0.3 m² are 3 W/cm². Gear oil of 1000 mm²/s bears 0.9 W/cm², 2.7 kW; of 320 mm²/s 1.9 W/cm², 5.7 kW.</summary>
    [Fact]
    public void Thick_oil_holds_the_heater_down()
    {
        var cold = Sump.Vg320.TemperatureFor(KinematicViscosity.FromCentistokes(1000)).Temperature;

        ((double)Heater.PowerAt(Sump.Vg320, cold).Kilowatts).ShouldBe(2.7, 1e-6);
        ((double)Heater.PowerAt(Sump.Vg320, Sump.Celsius(40)).Kilowatts).ShouldBe(5.7, 1e-6);
        Heater.IsHeldDownAt(Sump.Vg320, Sump.Celsius(40)).ShouldBeTrue();
        Heater.IsHeldDownAt(Sump.Vg46, Sump.Celsius(40)).ShouldBeFalse();
        ((double)Heater.PowerAt(Sump.Vg46, Sump.Celsius(40)).Kilowatts).ShouldBe(9, 1e-9);
    }

    /// <summary>Thin oil, no step on the way: −(C/U) ln(1 − U ΔT/P) with C = 2000 L · 0.8528 kg/L · 1.95 kJ/(kg K).</summary>
    [Fact]
    public void Heat_up_by_hand()
    {
        var job = Sump.Job(100, 50, Sump.Tank(start: 40, ambient: 20, loss: 40));
        Heater.TimeTo(job, Sump.Celsius(60)).TryEstimate(out var time).ShouldBeTrue();

        var gain = 9000 - 40 * 20.0;
        var hours = -(2000 * 0.8466 * 1990 / 40.0) * Math.Log(1 - 40 * 20 / gain) / 3600;
        time.TotalHours.ShouldBe(hours, 0.02 * hours);
    }

    /// <summary>Two legs at their own powers take as long as the whole: the heater is asked again where the oil has thinned.</summary>
    [Fact]
    public void Legs_add_up_and_a_held_down_heater_takes_longer()
    {
        var oil = Sump.Oil(line: Sump.Vg320);
        var tank = Sump.Tank(start: 10, ambient: 10);
        var whole = Hours(Heater, Sump.Job(100, 50, tank, oil), 60);
        var first = Hours(Heater, Sump.Job(100, 50, tank, oil), 35);
        var second = Hours(Heater, Sump.Job(100, 50, Sump.Tank(start: 35, ambient: 10), oil), 60);
        var wide = new TankHeater(Power.FromKilowatts(9), Area.FromSquareMeters(5));

        (first + second).ShouldBe(whole, 0.02 * whole);
        Hours(wide, Sump.Job(100, 50, tank, oil), 60).ShouldBeLessThan(0.8 * whole);

        static double Hours(TankHeater heater, TreatmentJob job, double celsius) =>
            heater.TimeTo(job, Sump.Celsius(celsius)).TryEstimate(out var time) ? time.TotalHours : 0;
    }

    [Fact]
    public void Too_weak_already_there_and_bad_input()
    {
        var job = Sump.Job(100, 50, Sump.Tank(loss: 400));

        Heater.TimeTo(job, Sump.Celsius(60)).ShouldBeOfType<Arrival<TimeSpan>.Never>();
        Heater.TimeTo(job, Sump.Celsius(10)).ShouldBeOfType<Arrival<TimeSpan>.Already>();
        Kit.Refused(() => new TankHeater(Power.Zero, Area.FromSquareMeters(1)), "power");
        Kit.Refused(() => new TankHeater(Power.FromKilowatts(1), Area.Zero), "heatedArea");
        Kit.Refused(() => Heater.TimeTo(job, Sump.Celsius(200)), "temperature");
        Should.Throw<ArgumentNullException>(() => Heater.TimeTo(null!, Sump.Celsius(60)));
        TankHeater.GuideSource.Text.ShouldContain("0.7 W/cm²");
        Heater.ToString().ShouldBe("tank heater 9 kW, 3 W/cm²");
    }
}
