using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Equipment;

public class DischargePumpTests
{
    private static readonly Pressure Chamber = Pressure.FromMillibars(60);

    private static DischargePump Pump(
        double height = 1.2,
        double length = 2,
        double millimetres = 40,
        double needed = 0.4,
        double litres = 25,
        bool variable = true
    ) =>
        new(
            VolumeFlow.FromLitersPerMinute(litres),
            Length.FromMeters(height),
            Length.FromMeters(length),
            Length.FromMillimeters(millimetres),
            Length.FromMeters(needed),
            variable
        );

    private static Temperature At(ViscosityTemperatureLine line, double centistokes) =>
        line.TemperatureFor(KinematicViscosity.FromCentistokes(centistokes)).Temperature;

    /// <summary>
    /// White, Fluid Mechanics, example 6.4 (from memory): oil of 0.0002 m²/s in 10 m of 6 cm pipe loses 4.9 m; Q = 0.0076 m³/s, Re = 810.
    /// </summary>
    [Fact]
    public void A_text_books_pipe()
    {
        var draw = Pump(4.9, 10, 60, 0, 60_000).At(Sump.Oil(), At(Sump.Vg46, 200), Chamber);

        draw.Flow.CubicMetersPerSecond.ShouldBe(0.0076, 0.0001);
        draw.Reynolds.ShouldBe(810, 5);
        draw.IsLaminar.ShouldBeTrue();
        draw.Outcome.ShouldBe(DischargePump.DrawOutcome.Slowed);
        draw.Friction.Meters.ShouldBe(4.9, 1e-9);
    }

    /// <summary>By hand: 128 · 5e-4 · 2/(π · 9.80665 · 0.04⁴) = 1623 s/m²; (1.2 − 0.4)/1623 = 4.93e-4 m³/s = 29.6 L/min.</summary>
    [Fact]
    public void Heavy_oil_slows_the_pump_to_what_the_column_carries()
    {
        var oil = Sump.Oil(line: Sump.Vg320);
        var thick = At(Sump.Vg320, 1000);

        Pump().At(oil, At(Sump.Vg320, 500), Chamber).Flow.LitersPerMinute.ShouldBe(25);
        Pump(litres: 40).At(oil, At(Sump.Vg320, 500), Chamber).Flow.LitersPerMinute.ShouldBe(29.58, 0.02);
        var draw = Pump().At(oil, thick, Chamber);
        draw.Flow.LitersPerMinute.ShouldBe(14.79, 0.02);
        draw.Outcome.ShouldBe(DischargePump.DrawOutcome.Slowed);
        Pump(variable: false).At(oil, thick, Chamber).Outcome.ShouldBe(DischargePump.DrawOutcome.Cavitates);
        Pump(height: 0.3).At(oil, thick, Chamber).Outcome.ShouldBe(DischargePump.DrawOutcome.NoFlow);
        Pump(height: 0.3).At(oil, thick, Chamber).Flow.LitersPerMinute.ShouldBe(0);
    }

    /// <summary>6000 Pa over 880 kg/m³ · g are 0.70 m: oil that gives off nothing more is pushed by the chamber's own pressure too.</summary>
    [Fact]
    public void Oil_without_vapour_is_pushed_by_the_chamber()
    {
        var oil = Sump.Oil();
        var boiling = Pump().At(oil, Sump.Celsius(20), Chamber);
        var still = Pump().At(oil, Sump.Celsius(20), Chamber, Pressure.Zero);

        (still.HeadLeft - boiling.HeadLeft).Meters.ShouldBe(6000 / (867 * 9.80665), 0.002);
        boiling.HeadLeft.Meters.ShouldBe(0.8, 1e-9);
    }

    [Fact]
    public void The_coldest_temperature_is_where_the_flow_is_just_carried()
    {
        var oil = Sump.Oil(line: Sump.Vg320);
        Pump().TryColdestFor(oil, VolumeFlow.FromLitersPerMinute(20), Chamber, out var coldest).ShouldBeTrue();

        // 500 · 29.58/20 = 739.6 mm²/s.
        coldest!.Viscosity.Centistokes.ShouldBe(739.6, 0.5);
        Pump().At(oil, coldest.Temperature, Chamber).Flow.LitersPerMinute.ShouldBe(20, 0.01);
        Pump(height: 0.1).TryColdestFor(oil, VolumeFlow.FromLitersPerMinute(20), Chamber, out _).ShouldBeFalse();
    }

    /// <summary>Blasius: at Re = 10⁴ a smooth pipe has f = 0.0316 (any handbook).</summary>
    [Fact]
    public void Thin_oil_is_not_laminar_and_is_told()
    {
        var draw = Pump(2, 5, 25, 0, 1000).At(Sump.Oil(), Sump.Celsius(140), Chamber);
        var velocity = draw.Flow.CubicMetersPerSecond / (Math.PI * 0.025 * 0.025 / 4);
        var friction = 2 * 9.80665 * 0.025 * 2 / (5 * velocity * velocity);

        draw.IsLaminar.ShouldBeFalse();
        friction.ShouldBe(0.0316 * Math.Pow(draw.Reynolds / 1e4, -0.25), 1e-4);
        draw.ToString().ShouldEndWith("slowed, not laminar");
    }

    [Fact]
    public void It_floods_where_more_comes_in_than_is_drawn()
    {
        var draw = Pump().At(Sump.Oil(line: Sump.Vg320), At(Sump.Vg320, 1000), Chamber);

        draw.Floods(VolumeFlow.FromLitersPerMinute(14)).ShouldBeFalse();
        draw.TryTimeToFlood(VolumeFlow.FromLitersPerMinute(20), Volume.FromLiters(60), out var time).ShouldBeTrue();

        // 60/(20 − 14.79).
        time.TotalMinutes.ShouldBe(11.52, 0.06);
        draw.TryTimeToFlood(VolumeFlow.FromLitersPerMinute(10), Volume.FromLiters(60), out _).ShouldBeFalse();
    }

    /// <summary>Never more than the full flow, never less when warmer, and no figure that is none, over all oils and lines.</summary>
    [Fact]
    public void Warmer_oil_is_drawn_no_slower() =>
        Gen.Select(Gen.Double[-20, 119], Gen.Double[0, 3], Gen.Double[5, 100], Gen.Double[0.1, 20])
            .Holds(
                (celsius, height, millimetres, length) =>
                {
                    var pump = Pump(height, length, millimetres, 0.5, 100);
                    var cold = pump.At(Sump.Oil(line: Sump.Vg460), Sump.Celsius(celsius), Chamber);
                    var warm = pump.At(Sump.Oil(line: Sump.Vg460), Sump.Celsius(celsius + 1), Chamber);
                    warm.Flow.LitersPerMinute.ShouldBeGreaterThanOrEqualTo(cold.Flow.LitersPerMinute * (1 - 1e-9));
                    cold.Flow.LitersPerMinute.ShouldBeInRange(0, 100 * (1 + 1e-9));
                    cold.Friction.Meters.ShouldBeLessThanOrEqualTo(Math.Max(0, cold.HeadLeft.Meters) + 1e-9);
                }
            );

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Kit.Refused(() => Pump(litres: 0), "fullFlow");
        Kit.Refused(() => Pump(height: -1), "height");
        Kit.Refused(() => Pump(length: 0), "suctionLength");
        Kit.Refused(() => Pump(millimetres: 0), "suctionDiameter");
        Kit.Refused(() => Pump(needed: 21), "headNeeded");
        Kit.Refused(() => Pump().At(Sump.Oil(), Sump.Celsius(20), Pressure.FromBars(2)), "chamberPressure");
        Kit.Refused(
            () => Pump().At(Sump.Oil(), Sump.Celsius(20), Chamber, Pressure.FromMillibars(61)),
            "vapourPressure"
        );
        Should.Throw<ArgumentNullException>(() => Pump().At(null!, Sump.Celsius(20), Chamber));
        Pump().ToString().ShouldBe("discharge pump 25 L/min, 1.2 m of oil above it, variable speed");
    }
}
