using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>A purge against its balance, summed in small steps.</summary>
public class HeadSpacePurgeTests
{
    /// <summary>
    /// A second route: Euler steps of the purge's two balances, with the humidity ratio of the Water room's air and the latent heat of the steam tables. Held at
    /// its temperature by a tank so lossless and heavy that nothing cools it, cooled by evaporation alone, and cooled by its surroundings.
    /// </summary>
    [Theory]
    [InlineData(2000, 100, 0, 60, 0, 1e12)]
    [InlineData(250, 30, 5, 60, 0, 1e12)]
    [InlineData(120, 40, 0, 40, 0, 1e12)]
    [InlineData(2000, 100, 0, 60, 0, 0)]
    [InlineData(600, 60, 2, 60, 60, 0)]
    public void A_purge_takes_as_long_as_its_balances_say(
        double from,
        double to,
        double gram,
        double celsius,
        double loss,
        double steel
    )
    {
        var tank = new Reservoir(
            Volume.FromLiters(2000),
            Sump.Celsius(celsius),
            Sump.Celsius(15),
            loss,
            MassFlow.FromGramsPerHour(gram),
            steel: Entropy.FromJoulesPerKelvin(steel)
        );
        var job = Sump.Job(from, to, tank);
        var purge = new HeadSpacePurge(
            MassFlow.FromKilogramsPerHour(20),
            Kit.DryAir(),
            StandardAtmosphere.SeaLevel,
            Ratio.FromPercent(70)
        );
        var dry = Kit.DryAir().HumidityRatioAt(StandardAtmosphere.SeaLevel).DecimalFractions;
        var mass = job.OilMass.Kilograms;
        var heat =
            mass * job.Oil.Properties.At(Sump.Celsius((celsius + 15) / 2)).HeatCapacity.JoulesPerKilogramKelvin + steel;
        var (hours, oil, ppm) = (0.0, celsius, from);
        const double Step = 1e-3;
        while (ppm > to)
        {
            var saturation = Sump.Mineral.SaturationAt(Sump.Celsius(oil)).Content.PartsPerMillion;
            var leaving = HumidAir
                .FromRelativeHumidity(
                    Sump.Celsius(oil),
                    RelativeHumidity.FromPercent(100 * Math.Min(1, ppm / saturation))
                )
                .HumidityRatioAt(StandardAtmosphere.SeaLevel)
                .DecimalFractions;
            var carried = 14 * (leaving - dry);
            oil -=
                (loss * (oil - 15) * 3600 + carried * WaterVapour.LatentHeat(Sump.Celsius(oil)).JoulesPerKilogram)
                / heat
                * Step;
            ppm += 1e6 * (gram * 1e-3 - carried) / mass * Step;
            hours += Step;
        }

        var row = purge.Assess(job);
        row.Water.ShouldBeExpected();
        row.RunTime!.Value.TotalHours.ShouldBe(hours, 2e-3 * hours + Step);
    }

    /// <summary>
    /// An unheated tank of 20 m³ that loses 300 W/K: at 60 °C for ever the purge would take less than half of the time. Heat of the machine that holds it brings that back.
    /// </summary>
    [Fact]
    public void A_tank_that_cools_is_dried_slowly()
    {
        HeadSpacePurge purge = new(
            MassFlow.FromKilogramsPerHour(2),
            Kit.DryAir(),
            StandardAtmosphere.SeaLevel,
            Ratio.FromPercent(50)
        );
        double Hours(double watt) =>
            purge
                .Assess(Sump.Job(400, 60, Sump.Tank(20_000, start: 60, ambient: 10, loss: 300, heatWatt: watt)))
                .Water.Hours();
        var (cold, held) = (Hours(0), Hours(15_000 + 8_000));
        cold.ShouldBeGreaterThan(2 * held);
        Hours(15_000).ShouldBeInRange(held, cold);
    }

    [Fact]
    public void A_purge_with_humid_air_has_a_floor_and_with_ingress_a_level()
    {
        var humid = HumidAir.FromRelativeHumidity(Sump.Celsius(25), RelativeHumidity.FromPercent(60));
        HeadSpacePurge Purge(HumidAir air) =>
            new(MassFlow.FromKilogramsPerHour(20), air, StandardAtmosphere.SeaLevel, Ratio.FromPercent(70));
        var job = Sump.Job(1000, 20, Sump.Tank(start: 60, ambient: 60));
        var row = Purge(humid).Assess(job);
        row.WhyNotWater.ShouldBe(WhyNot.FloorAboveTarget);
        // WTR-091 of water.csv.
        row.WaterFloor.PartsPerMillion.ShouldBe(24.354, 0.01);
        Purge(Kit.DryAir())
            .Assess(Sump.Job(1000, 20, Sump.Tank(start: 60, ambient: 60, ingressGramPerHour: 3000)))
            .WhyNotWater.ShouldBe(WhyNot.IngressTooHigh);
    }
}
