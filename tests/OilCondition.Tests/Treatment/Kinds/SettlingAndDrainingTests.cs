using OilCondition.Thermal;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>Settling against figures worked by hand.</summary>
public class SettlingAndDrainingTests
{
    /// <summary>800 W hold 2000 L at 40 °C against 40 W/K.</summary>
    private static Reservoir Held { get; } = Sump.Tank(start: 40, ambient: 20, heatWatt: 800);

    /// <summary>Down from 1000 to 150 mg/kg with 122.2 dissolved at 40 °C (water.csv): 850/877.8 of 1.2 m at 69 mm/h is 16.9 h.</summary>
    [Fact]
    public void Settling_takes_the_share_of_the_height()
    {
        var row = new SettlingAndDraining(Length.FromMeters(1.2), Kit.Micrometres(100)).Assess(
            Sump.Job(1000, 150, Held)
        );
        row.Water.ShouldBeExpected();
        row.RunTime!.Value.TotalHours.ShouldBe(850 / 877.8 * 1.2 / (1.913e-5 * 3600), 0.04);
        row.WaterFloor.PartsPerMillion.ShouldBe(122.2, 0.05);
        // 2000 L × 854.2 kg/m³ × 850 mg/kg = 1.452 kg.
        row.WaterRemoved.Liters.ShouldBe(1.452 / 0.9982, 0.002);
        row.Arrival.ShouldBe(row.Water);
        row.MeetsTarget.ShouldBeTrue();
        row.Cautions.ShouldContain(Caution.SpillsAndWaste);
    }

    [Fact]
    public void Water_does_not_sink_in_an_oil_that_is_heavier()
    {
        var oil = new TreatedOil(
            OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(1150)),
            Sump.Mineral,
            Sump.Vg46,
            Sump.Celsius(90)
        );
        var job = Sump.Job(1000, 150, oil: oil);
        var settling = new SettlingAndDraining(Length.FromMeters(1), Kit.Micrometres(100));
        settling.Assess(job).WhyNotWater.ShouldBe(WhyNot.WaterDoesNotSink);
        Kit.Spinner().Assess(job).WhyNotWater.ShouldBe(WhyNot.WaterDoesNotSink);
    }

    /// <summary>
    /// Stokes by hand, VG 46 at 40 °C: 46 mm²/s, 853.8 kg/m³. At 4 µm 9.80665 × 16e-12 × 1796.2/(18 × 853.8 × 46e-6) = 3.987e-7 m/s, through 1.2 m in 836 h; from
    /// 10 000 to 2500 per mL three quarters of it, 627 h.
    /// </summary>
    [Fact]
    public void Particles_settle_by_their_density()
    {
        TreatmentAssessment Row(Density? density, string code, ParticleIngression? ingression = null) =>
            new SettlingAndDraining(Length.FromMeters(1.2), Kit.Micrometres(100), particleDensity: density).Assess(
                Sump.Job(
                    300,
                    200,
                    Sump.Tank(start: 40, ambient: 20, heatWatt: 800, ingression: ingression),
                    targetCode: code
                )
            );

        Row(Kit.Quartz, "18/-/-").Particles.Hours().ShouldBe(627, 1);
        Row(Kit.Quartz, "18/-/-").RunTime.ShouldBe(Row(Kit.Quartz, "18/-/-").Particles.Time());

        // At 14 µm (14/4)² = 12.25 times as fast: from 320 to 80 per mL.
        Row(Kit.Quartz, "-/-/13").Particles.Hours().ShouldBe(627 / 12.25, 0.1);

        // At 6 µm (6/4)² = 2.25 times as fast: from 2500 to 640 per mL, of 836 h for the whole height at 4 µm.
        Row(Kit.Quartz, "-/16/-").Particles.Hours().ShouldBe(836 / 2.25 * (1 - 640 / 2500.0), 0.4);

        // The slowest rules: 18 at 4 µm(c).
        Row(Kit.Quartz, "18/18/13").Particles.Hours().ShouldBe(627, 1);
        Row(null, "18/-/-").WhyNotParticles.ShouldBe(WhyNot.DensityNotStated);
        Row(null, "20/18/15").Particles.ShouldBeAlready();
        Row(Density.FromKilogramsPerCubicMeter(800), "18/-/-").WhyNotParticles.ShouldBe(WhyNot.ParticlesTooLight);

        // 836 h × 60 min × R / 2e6 mL: 2500 per mL stay up at R = 99 700 a minute; at half of that (10 000 − 2500)/(10 000/836 − 1.4953) = 716.6 h.
        Row(Kit.Quartz, "18/-/-", new ParticleIngression(1e5, 0, 0)).WhyNotParticles.ShouldBe(WhyNot.IngressTooHigh);
        Row(Kit.Quartz, "18/-/-", new ParticleIngression(49_843, 0, 0)).Particles.Hours().ShouldBe(716.6, 2);
    }
}
