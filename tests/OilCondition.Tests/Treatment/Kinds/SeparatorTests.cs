using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>What holds for every separator.</summary>
public class SeparatorTests
{
    /// <summary>Nothing that removes only free or emulsified water goes below saturation, however it is run.</summary>
    [Fact]
    public void Separators_never_go_below_saturation() =>
        Gen.Select(
                Gen.Double[10, 70],
                Gen.Double[20, 20_000],
                Gen.Double[1, 2000],
                Gen.Double[0, 1],
                Gen.Double[0.05, 1]
            )
            .Holds(
                (celsius, ppm, target, emulsified, eta) =>
                {
                    var job = Sump.Job(
                        ppm,
                        target,
                        Sump.Tank(start: celsius, ambient: celsius),
                        emulsified: emulsified
                    );
                    var saturation = Sump.Mineral.SaturationAt(Sump.Celsius(celsius)).Content.PartsPerMillion;
                    ITreatment[] separators =
                    [
                        new SettlingAndDraining(Length.FromMeters(1), Kit.Micrometres(100)),
                        new Coalescer(Kit.Loop(), Ratio.FromDecimalFractions(eta), 1),
                        new WaterAbsorbingElements(Kit.Loop(), Ratio.FromDecimalFractions(eta), Volume.FromLiters(1)),
                        new Centrifuge(
                            Kit.Loop(),
                            Area.FromSquareMeters(2000),
                            Kit.Micrometres(30),
                            Kit.Micrometres(3)
                        ),
                    ];
                    foreach (var separator in separators)
                    {
                        var row = separator.Assess(job);
                        row.WaterFloor.PartsPerMillion.ShouldBeGreaterThanOrEqualTo(Math.Min(ppm, saturation) - 1e-6);
                        if (row.Water is Arrival<TimeSpan>.Expected)
                        {
                            target.ShouldBeGreaterThan(saturation);
                        }

                        if (target < Math.Min(ppm, saturation))
                        {
                            row.WhyNotWater.ShouldBe(WhyNot.FloorAboveTarget);
                        }
                    }
                },
                iter: 60
            );

    [Fact]
    public void Bad_input_is_named()
    {
        Kit.Refused(() => new SettlingAndDraining(Length.Zero, Kit.Micrometres(100)), "height");
        Kit.Refused(() => new SettlingAndDraining(Length.FromMeters(1), Length.Zero), "dropletDiameter");
        Kit.Refused(() => Kit.Spinner(0), "equivalentArea");
        Kit.Refused(() => new Coalescer(Kit.Loop(), Ratio.FromPercent(110), 1), "removalPerPass");
        Kit.Refused(
            () => new WaterAbsorbingElements(Kit.Loop(), Ratio.FromPercent(50), Volume.Zero),
            "capacityOfElement"
        );
        Kit.Refused(() => new FineFiltration(Kit.Loop(), Sump.Filter, -1), "elements");
        Kit.Refused(() => Kit.Loop(celsius: 200), "workingTemperature");
        Kit.Refused(() => new TreatmentPrices(perHour: -1), "perHour");
        var air = Kit.DryAir();
        Kit.Refused(
            () =>
                new HeadSpacePurge(
                    MassFlow.FromKilogramsPerHour(1),
                    air,
                    StandardAtmosphere.SeaLevel,
                    Ratio.FromPercent(101)
                ),
            "approach"
        );
        Kit.Refused(
            () =>
                new DrainAndRefill(
                    Ratio.FromPercent(100),
                    Sump.Ppm(50),
                    new(1, 1, 1),
                    VolumeFlow.FromLitersPerMinute(1)
                ),
            "heel"
        );
    }
}
