using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Record;

/// <summary>A unit's own removal per pass, from a run that was made with another one than the plan believed. All invented.</summary>
public class UnitCalibrationTests
{
    private static readonly TreatmentJob Job = new(
        new TreatedOil(Sump.Oil().Properties, Invented.Curve, Sump.Vg46, Sump.Celsius(90)),
        Sump.Tank(start: 60, ambient: 20, loss: 40, heatWatt: 1600),
        new Contamination(Sump.Ppm(300), Ratio.Zero, new ParticleLevels(1000, 300, 40)),
        new TreatmentTarget(Sump.Ppm(100)),
        TimeSpan.FromHours(100)
    );

    /// <summary>Hourly titrations of a tank that falls as a stirred tank does, dc/dt = −η Q (c − p)/V, written here; scatter of ±2 mg/kg that repeats.</summary>
    private static CleanupRecord Run(double eta, double scatter = 2, int readings = 25, double litres = 1200 * 24)
    {
        var floor = PurificationPlan.Create(Job, Sump.Unit(celsius: 60, pascal: 1500)).End.WaterFloor.PartsPerMillion;
        var options = CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(Sump.Ppm(100)),
            Invented.Curve,
            TimeSpan.FromHours(2),
            Sump.Celsius(45)
        );
        var log = Enumerable
            .Range(0, readings)
            .Select(hour =>
                CleanupReading.Titration(
                    Runs.At(hour),
                    Sump.Ppm(Runs.Exponential(hour, 300, floor, eta * 0.6) + scatter * (hour * 7 % 5 - 2) / 2),
                    Sump.Celsius(60)
                )
            );
        return CleanupRecord.Of(
            CleanupMonitor.Of(options, log).Status(),
            new CleanupRunFacts(
                "invented",
                new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerHour(1200)),
                LiveRuns.Oil870,
                Sump.Ppm(300),
                Volume.FromLiters(litres)
            )
        );
    }

    private static readonly PurificationPlan Plan = PurificationPlan.Create(Job, Sump.Unit(celsius: 60, pascal: 1500));

    [Theory]
    [InlineData(0.35)]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void A_run_gives_the_figure_for_the_next_plan(double eta)
    {
        UnitCalibration.TryFrom(Run(eta), Plan, out var found, out var reason).ShouldBeTrue(reason);
        found!.RemovalPerPass.DecimalFractions.ShouldBe(eta, 0.06 * eta);
        found.Lower.DecimalFractions.ShouldBeLessThan(eta);
        found.Upper.DecimalFractions.ShouldBeGreaterThan(eta);
        found.Temperature.DegreesCelsius.ShouldBe(60, 0.5);

        // The next plan takes as long as the run did: ln((300 − p)/(100 − p))/(0.6 η).
        var floor = Plan.End.WaterFloor.PartsPerMillion;
        var next = PurificationPlan.Create(Job, found.For(Plan.Unit));
        next.Arrival.Hours()
            .ShouldBe(
                Math.Log((300 - floor) / (100 - floor)) / (0.6 * eta),
                0.07 * Math.Log((300 - floor) / (100 - floor)) / (0.6 * eta)
            );
        next.Unit.RemovalViscosity.ShouldBe(found.Viscosity);

        // Its band is narrower than that of a figure from a catalogue.
        var usual = next.Band();
        var own = next.Band(found.Errors(InputErrors.Usual));
        (own.TimeP90 - own.TimeP10)!.Value.ShouldBeLessThan((usual.TimeP90 - usual.TimeP10)!.Value);
        found.ToString().ShouldContain("% a pass (");
    }

    /// <summary>More scatter, a wider interval.</summary>
    [Fact]
    public void The_interval_follows_the_scatter()
    {
        UnitCalibration.TryFrom(Run(0.5, scatter: 1), Plan, out var fine, out _).ShouldBeTrue();
        UnitCalibration.TryFrom(Run(0.5, scatter: 8), Plan, out var coarse, out _).ShouldBeTrue();
        (coarse!.Upper - coarse.Lower).ShouldBeGreaterThan(3 * (fine!.Upper - fine.Lower));
    }

    [Fact]
    public void A_run_that_says_nothing_gives_a_reason()
    {
        UnitCalibration.TryFrom(Run(0.5, readings: 3), Plan, out var none, out var few).ShouldBeFalse();
        none.ShouldBeNull();
        few!.ShouldContain("do not bound");

        // A quarter of the oil that was stated has passed: more than all of the excess would leave with each litre.
        UnitCalibration.TryFrom(Run(0.8, litres: 1200 * 24 / 4.0), Plan, out _, out var much).ShouldBeFalse();
        much!.ShouldContain("flow or volume");
    }
}
