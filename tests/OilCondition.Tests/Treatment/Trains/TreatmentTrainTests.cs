using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Trains;

/// <summary>Stages in a row: each hands on what it leaves, and the row answers like any other treatment.</summary>
public class TreatmentTrainTests
{
    private static readonly SettlingAndDraining Settling = new(Length.FromMeters(1), Length.FromMicrometers(40));

    private static readonly VacuumDehydration Drying = new(Sump.Unit(pascal: 2000));

    private static readonly FineFiltration Filtering = new(Kit.Loop(), Sump.Filter, 1);

    private static readonly TankHeater Heater = new(Power.FromKilowatts(9), Area.FromSquareMeters(0.6));

    /// <summary>Stokes' drops of one size fall out in a straight line: in half the time to sink through the height half of the free water is gone.</summary>
    [Fact]
    public void Half_the_time_settles_half_the_free_water()
    {
        var job = Sump.Job(1000, 60);
        var saturation = job.WaterAt(Sump.Celsius(20)).Dissolved.PartsPerMillion;
        var half = (1000 + saturation) / 2;
        Settling.Assess(job.With(target: new TreatmentTarget(Sump.Ppm(half)))).Water!.TryEstimate(out var time);

        var steps = new TreatmentTrain("settle", TrainStage.For(Settling, time)).Run(job);

        steps.Single().End.Water.PartsPerMillion.ShouldBe(half, 0.01);
        steps.Single().EndTemperature.DegreesCelsius.ShouldBe(20, 1e-9);
        steps.Single().WaterRemoved.Liters.ShouldBe((1000 - half) * 1e-6 * 2000 * 0.8667 / 0.9982, 0.01);
    }

    [Fact]
    public void A_train_of_one_stage_is_that_treatment()
    {
        var job = Sump.Job(400, 60);
        var alone = Drying.Assess(job);
        var train = new TreatmentTrain("dry", TrainStage.Until(Drying)).Assess(job);

        train.RunTime!.Value.TotalHours.ShouldBe(alone.RunTime!.Value.TotalHours, 1e-6);
        train.WaterFloor.ShouldBe(alone.WaterFloor);
        train.Heat.KilowattHours.ShouldBe(alone.Heat.KilowattHours, 0.01 * alone.Heat.KilowattHours);
        train.WaterRemoved.Liters.ShouldBe(alone.WaterRemoved.Liters, 0.03 * alone.WaterRemoved.Liters);
        train.Cautions.ShouldBe(alone.Cautions, ignoreOrder: true);
    }

    /// <summary>Temperature and water are all that a dehydration hands on: cut in two it takes as long as in one piece, but for the density at another mean.</summary>
    [Fact]
    public void A_dehydration_cut_in_two_takes_as_long()
    {
        var job = Sump.Job(600, 60);
        var whole = Drying.Assess(job).RunTime!.Value;
        var cut = new TreatmentTrain(
            "in two",
            TrainStage.For(Drying, TimeSpan.FromHours(0.4 * whole.TotalHours)),
            TrainStage.Until(Drying)
        ).Assess(job);

        cut.RunTime!.Value.TotalHours.ShouldBe(whole.TotalHours, 0.02 * whole.TotalHours);
    }

    [Fact]
    public void Drain_heat_dry_and_filter_in_one_row()
    {
        var job = Sump.Job(3000, 60, Sump.Tank(start: 20), targetCode: "16/14/11");
        var train = new TreatmentTrain(
            "drain, heat, dry, filter",
            TrainStage.For(Settling, TimeSpan.FromHours(24)),
            TrainStage.Heating(Heater, Sump.Celsius(45)),
            TrainStage.Until(Drying),
            TrainStage.Until(Filtering)
        );

        var steps = train.Run(job);
        var row = TreatmentComparison.Of(job, train, Drying).Rows[0];

        steps.Count.ShouldBe(4);
        steps.ShouldAllBe(step => step.WhyNot == null);
        steps[0].End.Water.PartsPerMillion.ShouldBeLessThan(3000);
        steps[1].End.Water.ShouldBe(steps[0].End.Water);
        steps[1].EndTemperature.DegreesCelsius.ShouldBe(45, 1e-9);
        steps[2].Start.Reservoir.Start.DegreesCelsius.ShouldBe(45, 1e-9);
        steps[2].End.Water.PartsPerMillion.ShouldBe(60, 0.1);
        steps[3].End.Particles.Code.ToString().ShouldBe("16/14/11");
        row.Treatment.ShouldBe(train);
        row.MeetsTarget.ShouldBeTrue();
        row.RunTime!.Value.TotalHours.ShouldBe(steps.Sum(step => step.Time.TotalHours), 0.01);
        row.Water!.TryEstimate(out var dry).ShouldBeTrue();
        dry.TotalHours.ShouldBe(steps.Take(3).Sum(step => step.Time.TotalHours), 0.01);
        row.WaterFloor.PartsPerMillion.ShouldBe(steps.Min(step => step.Floor.PartsPerMillion), 1e-6);
        row.Cautions.ShouldContain(Caution.Vacuum);
        row.Heat.KilowattHours.ShouldBe(steps.Sum(step => step.Heat.KilowattHours), 1e-6);
        row.ToString().ShouldStartWith("drain, heat, dry, filter: water in ");
    }

    /// <summary>10 g/h into 1734 kg are 5.8 mg/kg an hour: what a filter does not reach rises while it runs.</summary>
    [Fact]
    public void Water_rises_again_while_a_filter_runs_and_the_row_says_so()
    {
        var job = Sump.Job(400, 60, Sump.Tank(ingressGramPerHour: 10));
        var last = TrainStage.For(Filtering, TimeSpan.FromHours(20));
        var train = new TreatmentTrain("dry, then filter", TrainStage.Until(Drying), last);

        var steps = train.Run(job);
        var row = train.Assess(job);

        // 2000 L of 0.867 kg/L at 20 °C; warm oil is no lighter.
        var rise = steps[1].End.Water.PartsPerMillion - steps[0].End.Water.PartsPerMillion;
        rise.ShouldBe(1e6 * 0.010 * 20 / 1734, 0.5);
        row.MeetsTarget.ShouldBeFalse();
        row.WhyNotWater.ShouldBe(WhyNot.TakesTooLong);
    }

    [Fact]
    public void A_stage_that_does_not_get_there_stops_the_train_and_names_the_reason()
    {
        var job = Sump.Job(1000, 40, targetCode: "16/14/11");
        var weak = new TankHeater(Power.FromWatts(500), Area.FromSquareMeters(0.1));

        Why(TrainStage.Until(Settling), TrainStage.Until(Filtering)).ShouldBe(WhyNot.FloorAboveTarget);
        Why(TrainStage.Heating(weak, Sump.Celsius(60)), TrainStage.Until(Drying)).ShouldBe(WhyNot.HeaterTooWeak);
        Why(TrainStage.For(Settling, TimeSpan.FromHours(2401)), TrainStage.Until(Drying)).ShouldBe(WhyNot.TakesTooLong);
        Why(TrainStage.Until(Filtering)).ShouldBe(WhyNot.NotTouched);
        new TreatmentTrain("hot", TrainStage.Heating(Heater, Sump.Celsius(90)), TrainStage.Until(Drying))
            .Assess(Sump.Job(1000, 60, oil: Sump.Oil(highest: 80)))
            .WhyNotWater.ShouldBe(WhyNot.TooHot);

        WhyNot? Why(params TrainStage[] stages) => new TreatmentTrain("some", stages).Assess(job).WhyNotWater;
    }

    /// <summary>What was reached stays reached, though a later stage fails.</summary>
    [Fact]
    public void Dry_oil_stays_dry_where_the_filter_does_not_get_there()
    {
        var tank = Sump.Tank(ingression: new ParticleIngression(1e12, 1e11, 1e10));
        var job = Sump.Job(400, 60, tank, targetCode: "16/14/11");
        var row = new TreatmentTrain("dry, filter", TrainStage.Until(Drying), TrainStage.Until(Filtering)).Assess(job);

        row.WhyNotWater.ShouldBeNull();
        row.Water!.TryEstimate(out _).ShouldBeTrue();
        row.WhyNotParticles.ShouldBe(WhyNot.IngressTooHigh);
        row.MeetsTarget.ShouldBeFalse();
    }

    /// <summary>The horizon is that of the whole train, and a pump that cannot start runs no stage, timed or not.</summary>
    [Fact]
    public void Stages_share_the_time_and_a_pump_that_cannot_start_is_named()
    {
        var night = TrainStage.For(Settling, TimeSpan.FromHours(30));
        var steps = new TreatmentTrain("two nights", night, night).Run(Sump.Job(1000, 60, horizonHours: 50));
        steps[1].Start.Horizon.TotalHours.ShouldBe(20, 1e-9);
        steps[1].WhyNot.ShouldBe(WhyNot.TakesTooLong);

        var thick = new VacuumDehydration(Sump.Unit(startViscosity: 800));
        new TreatmentTrain("cold", TrainStage.For(thick, TimeSpan.FromHours(10)))
            .Run(Sump.Job(1000, 60, Sump.Tank(start: 5), Sump.Oil(line: Sump.Vg460)))
            .Single()
            .WhyNot.ShouldBe(WhyNot.PumpCannotStart);
    }

    [Fact]
    public void Oil_that_nobody_heats_cools_between_stages()
    {
        // Loss 40 W/K, 1708 kg of 1.97 kJ/(kg K): C/U = 23.4 h, so that 40 K above the hall are 40/e after as long.
        var job = Sump.Job(1000, 60, Sump.Tank(start: 60));
        var step = new TreatmentTrain("stand", TrainStage.For(Settling, TimeSpan.FromHours(23.4))).Run(job).Single();

        step.EndTemperature.DegreesCelsius.ShouldBe(20 + 40 / Math.E, 0.6);
    }

    [Fact]
    public void An_oil_change_hands_on_new_oil()
    {
        var change = new DrainAndRefill(
            Ratio.FromPercent(10),
            Sump.Ppm(50),
            ParticleLevels.FromCode(OilCondition.Cleanliness.CleanlinessCode.Parse("17/15/12")),
            VolumeFlow.FromLitersPerMinute(60)
        );
        var step = new TreatmentTrain("change", TrainStage.Until(change, new TreatmentTarget(Sump.Ppm(200))))
            .Run(Sump.Job(1000, 60, Sump.Tank(start: 50)))
            .Single();

        // 50 + 0.1 (1000 − 50); a tenth of the oil is still at 50 °C.
        step.End.Water.PartsPerMillion.ShouldBe(145, 0.01);
        step.NewOil.Liters.ShouldBe(1800, 1e-6);
        step.EndTemperature.DegreesCelsius.ShouldBe(23, 1e-6);
    }

    [Fact]
    public void A_treatment_of_your_own_takes_part()
    {
        var job = Sump.Job(500, 100);
        var step = new TreatmentTrain("own", TrainStage.For(new Straight(), TimeSpan.FromHours(30))).Run(job).Single();

        step.End.Water.PartsPerMillion.ShouldBe(200, 1e-3);
    }

    /// <summary>Takes 10 mg/kg an hour.</summary>
    private sealed class Straight : ITreatment
    {
        public string Name => "straight";

        public TreatmentKind? Kind => null;

        public ContaminationForms Reaches => ContaminationForms.DissolvedWater;

        public TreatmentAssessment Assess(TreatmentJob job) =>
            new(
                this,
                job,
                MassFraction.Zero,
                TimeSpan.FromHours((job.Contamination.Water - job.Target.Water!.Value).PartsPerMillion / 10)
            );
    }

    [Fact]
    public void Without_ingress_no_stage_makes_oil_worse() =>
        Gen.Select(Gen.Double[100, 4000], Gen.Double[0.5, 100], Gen.Double[5, 60])
            .Holds(
                (ppm, hours, start) =>
                {
                    var job = Sump.Job(ppm, 60, Sump.Tank(start: start));
                    var steps = new TreatmentTrain(
                        "any",
                        TrainStage.For(Settling, TimeSpan.FromHours(hours)),
                        TrainStage.For(Filtering, TimeSpan.FromHours(hours)),
                        TrainStage.For(Drying, TimeSpan.FromHours(hours / 4))
                    ).Run(job);
                    foreach (var step in steps)
                    {
                        step.End.Water.PartsPerMillion.ShouldBeLessThanOrEqualTo(
                            step.Start.Contamination.Water.PartsPerMillion * (1 + 1e-9)
                        );
                        step.End.Particles.At6PerMillilitre.ShouldBeLessThanOrEqualTo(
                            step.Start.Contamination.Particles.At6PerMillilitre
                        );
                    }
                },
                iter: 20
            );

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Should.Throw<ArgumentException>(() => new TreatmentTrain(" ", TrainStage.Until(Drying)));
        Kit.Refused(() => new TreatmentTrain("none"), "stages");
        Kit.Refused(() => new TreatmentTrain("many", [.. Enumerable.Repeat(TrainStage.Until(Drying), 21)]), "stages");
        Should.Throw<ArgumentNullException>(() => new TreatmentTrain("null", TrainStage.Until(Drying), null!));
        Should.Throw<ArgumentNullException>(() => new TreatmentTrain("null", TrainStage.Until(Drying)).Run(null!));
        Should.Throw<ArgumentNullException>(() => TrainStage.Until(null!));
        Kit.Refused(() => TrainStage.For(Drying, TimeSpan.Zero), "duration");
        Kit.Refused(() => TrainStage.Heating(Heater, Sump.Celsius(151)), "temperature");
    }

    [Fact]
    public void Prints_itself()
    {
        var train = new TreatmentTrain(
            "two",
            TrainStage.Heating(Heater, Sump.Celsius(45)),
            TrainStage.For(Settling, TimeSpan.FromHours(12)),
            TrainStage.Until(Drying, new TreatmentTarget(Sump.Ppm(80)))
        );

        train
            .ToString()
            .ShouldBe(
                "two: heating to 45 °C, then settling and draining for 12 h, then vacuum dehydration to 80 mg/kg"
            );
        new TreatmentTrain("one", TrainStage.Until(Settling))
            .Run(Sump.Job(1000, 10))[0]
            .ToString()
            .ShouldBe("settling and draining: does not get there (floor above target)");
    }
}
