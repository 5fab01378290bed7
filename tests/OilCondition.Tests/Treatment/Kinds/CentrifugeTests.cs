using OilCondition.Cleanliness;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>A centrifuge against its two rates and the kidney loop.</summary>
public class CentrifugeTests
{
    /// <summary>Drops and emulsion fall each at its own rate; the content at the stated time is put together again here.</summary>
    [Fact]
    public void A_centrifuge_reaches_an_emulsion_in_part()
    {
        var job = Sump.Job(2000, 200, Sump.Tank(start: 50, ambient: 20, heatWatt: 1200), emulsified: 0.25);
        var spinner = Kit.Spinner();
        var oil = Sump.Oil();
        var big = spinner.RemovalPerPass(job, Kit.Micrometres(20)).DecimalFractions;
        var small = spinner.RemovalPerPass(job, Kit.Micrometres(3)).DecimalFractions;
        big.ShouldBe(1);
        var fine = DropletSettling.In(oil, Sump.Celsius(50), Kit.Micrometres(3)).Velocity.MetersPerSecond;
        small.ShouldBe(fine * 2000 / (40e-3 / 60), 1e-9);
        small.ShouldBeInRange(0.01, 0.5);

        var row = spinner.Assess(job);
        var hours = row.RunTime!.Value.TotalHours;
        var dissolved = Sump.Mineral.SaturationAt(Sump.Celsius(50)).Content.PartsPerMillion;
        var free = 2000 - dissolved;
        (dissolved + 0.75 * free * Math.Exp(-1.2 * hours) + 0.25 * free * Math.Exp(-1.2 * small * hours)).ShouldBe(
            200,
            0.01
        );
        row.Heat.KilowattHours.ShouldBe(0, 1e-6);

        // Cold oil is thicker and holds less dissolved: it is separated while it warms, with what falls into solution left in.
        var cold = spinner.Assess(Sump.Job(2000, 200, emulsified: 0.25));
        cold.RunTime!.Value.TotalHours.ShouldBeInRange(hours + 0.3, 1.3 * hours);
        cold.Heat.KilowattHours.ShouldBeInRange(10, 18 * cold.RunTime!.Value.TotalHours);
    }

    /// <summary>The same velocity v on Σ: η = v Σ/Q as of drops, and from there the kidney loop with β = 1/(1 − η).</summary>
    [Fact]
    public void A_centrifuge_takes_particles_by_their_density()
    {
        var loop = Kit.Loop(celsius: 40, kilowatt: 18);
        TreatmentAssessment Row(Density? density, double squareMetres, ParticleIngression? ingression = null) =>
            new Centrifuge(
                loop,
                Area.FromSquareMeters(squareMetres),
                Kit.Micrometres(30),
                Kit.Micrometres(3),
                density
            ).Assess(
                Sump.Job(1000, 600, Sump.Tank(start: 40, ambient: 40, ingression: ingression), targetCode: "17/-/-")
            );

        // 40 L/min = 6.667e-4 m³/s; 3.987e-7 × 500/6.667e-4 = 0.299.
        const double Share = 3.987e-7 * 500 / (0.04 / 60);
        var kidney = new KidneyLoop(
            Volume.FromLiters(2000),
            VolumeFlow.FromLitersPerMinute(40),
            new FilterBeta(1 / (1 - Share)),
            1e6
        );
        var row = Row(Kit.Quartz, 500, new ParticleIngression(1e6, 0, 0));
        row.Particles.Hours().ShouldBe(kidney.TimeTo(10_000, 1300).Hours(), 0.01);
        row.RunTime.ShouldBe(row.Particles.Time() > row.Water.Time() ? row.Particles.Time() : row.Water.Time());
        row.Treatment.Reaches.HasFlag(ContaminationForms.Particles).ShouldBeTrue();

        // Cold oil is warmed on the way: 2000 L through 30 K at 18 kW take some 1.5 h, in which less is taken out per pass.
        var cold = new Centrifuge(
            loop,
            Area.FromSquareMeters(500),
            Kit.Micrometres(30),
            Kit.Micrometres(3),
            Kit.Quartz
        ).Assess(Sump.Job(1000, 600, Sump.Tank(start: 10, ambient: 10), targetCode: "17/-/-"));
        (cold.Particles.Time() - Row(Kit.Quartz, 500).Particles.Time()).TotalHours.ShouldBeInRange(0.4, 1.5);

        // All of it in one pass: V/Q ln(10 000/1300) = 0.8333 × 2.0402 h.
        Row(Kit.Quartz, 1e5).Particles.Hours().ShouldBe(0.83333 * Math.Log(10_000 / 1300.0), 1e-4);
        Row(Kit.Quartz, 500, new ParticleIngression(2e7, 0, 0)).WhyNotParticles.ShouldBe(WhyNot.IngressTooHigh);
        Row(null, 500).WhyNotParticles.ShouldBe(WhyNot.DensityNotStated);
        Row(null, 500).Treatment.Reaches.HasFlag(ContaminationForms.Particles).ShouldBeFalse();
        Kit.Refused(
            () =>
                new SettlingAndDraining(
                    Length.FromMeters(1),
                    Kit.Micrometres(100),
                    particleDensity: Density.FromKilogramsPerCubicMeter(2.65)
                ),
            "particleDensity"
        );
    }
}
