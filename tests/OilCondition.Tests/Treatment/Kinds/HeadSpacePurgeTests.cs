using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>A purge against its balance, summed in small steps.</summary>
public class HeadSpacePurgeTests
{
    /// <summary>
    /// A second route: the balance of the purge summed in small steps of content, with the humidity ratio of the Water room's air.
    /// </summary>
    [Theory]
    [InlineData(2000, 100, 0, 60)]
    [InlineData(250, 30, 5, 60)]
    [InlineData(120, 40, 0, 40)]
    public void A_purge_takes_as_long_as_its_balance_says(double from, double to, double gram, double celsius)
    {
        var tank = Sump.Tank(start: celsius, ingressGramPerHour: gram);
        var job = Sump.Job(from, to, tank);
        var purge = new HeadSpacePurge(
            MassFlow.FromKilogramsPerHour(20),
            Kit.DryAir(),
            StandardAtmosphere.SeaLevel,
            Ratio.FromPercent(70)
        );
        var saturation = Sump.Mineral.SaturationAt(Sump.Celsius(celsius)).Content.PartsPerMillion;
        var dry = Kit.DryAir().HumidityRatioAt(StandardAtmosphere.SeaLevel).DecimalFractions;
        double hours = 0;
        const int Steps = 20_000;
        var width = (from - to) / Steps;
        for (var i = 0; i < Steps; i++)
        {
            var activity = Math.Min(1, (from - (i + 0.5) * width) / saturation);
            var leaving = HumidAir
                .FromRelativeHumidity(Sump.Celsius(celsius), RelativeHumidity.FromPercent(100 * activity))
                .HumidityRatioAt(StandardAtmosphere.SeaLevel)
                .DecimalFractions;
            hours +=
                job.OilMassAt(Sump.Celsius(celsius)).Kilograms * width * 1e-6 / (14 * (leaving - dry) - gram * 1e-3);
        }

        var row = purge.Assess(job);
        row.Water.ShouldBeExpected();
        row.RunTime!.Value.TotalHours.ShouldBe(hours, 2e-4 * hours);
    }

    [Fact]
    public void A_purge_with_humid_air_has_a_floor_and_with_ingress_a_level()
    {
        var humid = HumidAir.FromRelativeHumidity(Sump.Celsius(25), RelativeHumidity.FromPercent(60));
        HeadSpacePurge Purge(HumidAir air) =>
            new(MassFlow.FromKilogramsPerHour(20), air, StandardAtmosphere.SeaLevel, Ratio.FromPercent(70));
        var job = Sump.Job(1000, 20, Sump.Tank(start: 60));
        var row = Purge(humid).Assess(job);
        row.WhyNotWater.ShouldBe(WhyNot.FloorAboveTarget);
        // WTR-091 of water.csv.
        row.WaterFloor.PartsPerMillion.ShouldBe(24.354, 0.01);
        Purge(Kit.DryAir())
            .Assess(Sump.Job(1000, 20, Sump.Tank(start: 60, ingressGramPerHour: 3000)))
            .WhyNotWater.ShouldBe(WhyNot.IngressTooHigh);
    }
}
