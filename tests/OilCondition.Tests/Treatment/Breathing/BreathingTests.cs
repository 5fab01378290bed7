using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Breathing;

public class BreathingTests
{
    private static readonly OilProperties Oil = OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(870));

    private static readonly HumidAir Hall = HumidAir.FromRelativeHumidity(
        Sump.Celsius(20),
        RelativeHumidity.FromPercent(60)
    );

    private static TankBreathing Tank(double air = 600, double swing = 12, double oil = 20, double stroke = 0) =>
        new(
            Volume.FromLiters(air),
            Volume.FromLiters(1800),
            Oil,
            Sump.Celsius(15),
            TemperatureDelta.FromKelvins(swing),
            TemperatureDelta.FromKelvins(oil),
            levelSwing: Volume.FromLiters(stroke),
            strokesPerDay: 24
        );

    /// <summary>600 L · 12/300.15 = 24.0 L; 1800 L of oil by 20 K at 0.00072 to 0.00074 per K are 26.2 L; 24 strokes of 5 L.</summary>
    [Fact]
    public void Litres_by_hand()
    {
        Tank().ThermalPerDay.Liters.ShouldBe(24.0 + 26.2, 0.5);
        Tank(stroke: 5).LevelPerDay.Liters.ShouldBe(120, 1e-9);
        Tank(swing: 0, oil: 0).AirPerDay.Liters.ShouldBe(0);
    }

    /// <summary>Handbooks: saturated air of 20 °C holds 17.3 g/m³; 60 % of it over 1 m³ a day.</summary>
    [Fact]
    public void Water_that_comes_with_the_air()
    {
        var one = Tank(swing: 0, oil: 0, stroke: 1000.0 / 24);

        one.WaterIn(Hall).GramsPerDay.ShouldBe(0.6 * 17.3, 0.05);
    }

    /// <summary>30 % of 700 g are 210 g; 50.4 L a day at 10.4 g/m³ bring 0.524 g: 401 days.</summary>
    [Fact]
    public void Days_of_a_desiccant_breather()
    {
        var breather = new DesiccantBreather(Mass.FromKilograms(0.7), Ratio.FromPercent(30));

        breather.WaterHeld.Grams.ShouldBe(210, 1e-9);
        breather.TryLife(Tank(), Hall, out var life).ShouldBeTrue();
        life.TotalDays.ShouldBe(401, 5);
        breather.TryLife(Tank(swing: 0, oil: 0), Hall, out _).ShouldBeFalse();
        breather.ToString().ShouldBe("0.7 kg of desiccant, holds 210 g of water");
        Tank(swing: 0, oil: 0, stroke: 5).ToString().ShouldBe("120 L of air a day, 0 L by warmth, 120 L by level");
    }

    [Fact]
    public void Twice_the_desiccant_lasts_twice_as_long_and_wetter_air_shorter() =>
        Gen.Select(Gen.Double[0.01, 50], Gen.Double[5, 95])
            .Holds(
                (kilograms, humidity) =>
                {
                    var air = HumidAir.FromRelativeHumidity(Sump.Celsius(25), RelativeHumidity.FromPercent(humidity));
                    var wetter = HumidAir.FromRelativeHumidity(
                        Sump.Celsius(25),
                        RelativeHumidity.FromPercent(humidity + 4)
                    );
                    Days(kilograms, air).ShouldBe(Days(2 * kilograms, air) / 2, 1e-6 * Days(kilograms, air));
                    Days(kilograms, wetter).ShouldBeLessThan(Days(kilograms, air));
                }
            );

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Kit.Refused(() => Tank(air: -1), "airSpace");
        Kit.Refused(() => Tank(swing: -1), "airSwing");
        Kit.Refused(() => Tank(oil: 151), "oilSwing");
        Kit.Refused(() => Tank(stroke: -1), "levelSwing");
        Kit.Refused(() => new DesiccantBreather(Mass.Zero, Ratio.FromPercent(30)), "desiccant");
        Kit.Refused(() => new DesiccantBreather(Mass.FromKilograms(1), Ratio.FromPercent(51)), "uptake");
        Should.Throw<ArgumentNullException>(() => Tank().WaterIn(null!));
    }

    private static double Days(double kilograms, HumidAir air) =>
        new DesiccantBreather(Mass.FromKilograms(kilograms), Ratio.FromPercent(20)).TryLife(Tank(), air, out var life)
            ? life.TotalDays
            : 0;
}
