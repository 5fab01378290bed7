using OilCondition.Cleanliness;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment;

/// <summary>The tables: all treatments, costs, what sets the time, what cold thick oil costs. The station is invented.</summary>
public class ComparisonTests
{
    private static readonly PurificationUnit Unit = Sump.Unit(filter: Sump.Filter, motorKilowatt: 4);

    private static SideLoop Loop(double? celsius = null) =>
        new(
            new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(40), KinematicViscosity.FromCentistokes(700)),
            celsius is { } warm ? Sump.Celsius(warm) : null,
            Power.FromKilowatts(12),
            Power.FromKilowatts(1.5)
        );

    private static TreatmentComparison All(TreatmentJob job) =>
        TreatmentComparison.Of(
            job,
            new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(100)),
            new Centrifuge(
                Loop(50),
                Area.FromSquareMeters(3000),
                Length.FromMicrometers(20),
                Length.FromMicrometers(3)
            ),
            new Coalescer(Loop(), Ratio.FromPercent(60), 2),
            new WaterAbsorbingElements(Loop(), Ratio.FromPercent(50), Volume.FromLiters(0.5)),
            new VacuumDehydration(Unit),
            new HeadSpacePurge(
                MassFlow.FromKilogramsPerHour(5),
                HumidAir.FromDewPoint(Sump.Celsius(20), Sump.Celsius(-40)),
                StandardAtmosphere.SeaLevel,
                Ratio.FromPercent(60)
            ),
            new FineFiltration(Loop(), Sump.Filter, 1),
            new DrainAndRefill(
                Ratio.FromPercent(5),
                Sump.Ppm(40),
                ParticleLevels.FromCode(CleanlinessCode.Parse("17/15/12")),
                VolumeFlow.FromLitersPerMinute(60)
            )
        );

    /// <summary>Oil with 1500 mg/kg, a third of the excess emulsified, dry to 30 mg/kg at 20 °C and clean to 18/16/13.</summary>
    [Fact]
    public void Only_what_reaches_every_form_meets_a_target_below_saturation()
    {
        var table = All(Sump.Job(1500, 90, emulsified: 1 / 3.0, targetCode: "18/16/13"));
        TreatmentAssessment Row(string name) => table.Rows.Single(row => row.Treatment.Name == name);

        table.Rows.Count.ShouldBe(8);
        table
            .Rows.Where(row => row.MeetsTarget)
            .Select(row => row.Treatment.Name)
            .ShouldBe(["drain and refill", "vacuum dehydration"]);
        Row("vacuum dehydration").Water.Outcome.ShouldBe(TreatmentOutcome.Reached);
        Row("settling and draining").Water.Outcome.ShouldBe(TreatmentOutcome.EmulsionAboveTarget);
        Row("coalescer").Water.Outcome.ShouldBe(TreatmentOutcome.EmulsionAboveTarget);
        Row("centrifuge").Water.Outcome.ShouldBe(TreatmentOutcome.FloorAboveTarget);
        Row("water-absorbing elements").Water.Outcome.ShouldBe(TreatmentOutcome.Reached);
        Row("water-absorbing elements").Particles.Outcome.ShouldBe(TreatmentOutcome.NotReachedByTreatment);
        Row("fine filtration").Particles.Outcome.ShouldBe(TreatmentOutcome.Reached);
        Row("drain and refill").NewOil.Liters.ShouldBe(3800, 1e-6);
        table.Rows.ShouldAllBe(row => row.Cautions.Count > 0);

        // Below saturation at 20 °C (52.9 mg/kg) the separators are out, whatever the form.
        var dry = All(Sump.Job(1500, 45));
        dry.Rows.Where(row => row.Water.IsMet)
            .ShouldAllBe(row => row.Treatment.Reaches.HasFlag(ContaminationForms.DissolvedWater));
        dry.Rows.Single(row => row.Treatment.Name == "water-absorbing elements")
            .Water.Outcome.ShouldBe(TreatmentOutcome.FloorAboveTarget);
    }

    [Fact]
    public void The_table_prints_one_line_a_treatment()
    {
        var lines = All(Sump.Job(1500, 90)).ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        lines.Length.ShouldBe(9);
        lines[0].ShouldStartWith("treatment");
        lines.ShouldContain(line =>
            line.StartsWith("vacuum dehydration", StringComparison.Ordinal) && line.Contains(" reached ")
        );

        // Ruled out: why, its floor, and no hours and no bill.
        lines.ShouldContain(line =>
            line.StartsWith("fine filtration", StringComparison.Ordinal)
            && line.Contains(" not reached by treatment ")
            && line.EndsWith("-         -", StringComparison.Ordinal)
        );
        lines.Select(line => line.Length).Distinct().Count().ShouldBe(1);
    }

    [Fact]
    public void The_row_of_the_vacuum_unit_is_its_plan()
    {
        var job = Sump.Job(1500, 90, targetCode: "16/14/11");
        var plan = PurificationPlan.Create(job, Unit);
        var row = new VacuumDehydration(Unit).Assess(job);
        row.RunTime.TotalHours.ShouldBe(plan.Time.TotalHours, 1e-5 * plan.Time.TotalHours);
        row.Heat.KilowattHours.ShouldBe(plan.Last.HeaterEnergy.KilowattHours, 1e-3);
        row.Electricity.KilowattHours.ShouldBe(4 * plan.Time.TotalHours, 1e-3);
        row.WaterFloor.ShouldBe(plan.End.WaterFloor);

        // A part that is never reached does not hide the other.
        var half = new VacuumDehydration(Sump.Unit()).Assess(job);
        half.Particles.Outcome.ShouldBe(TreatmentOutcome.NotReachedByTreatment);
        half.RunTime.TotalHours.ShouldBe(half.Water.Time.TotalHours, 1e-9);
        half.Heat.KilowattHours.ShouldBeInRange(30, 80);
    }

    /// <summary>Costs are the user's figures times hours, kWh, elements and litres, and nothing else.</summary>
    [Fact]
    public void Costs_come_from_the_users_own_prices()
    {
        var row = new Coalescer(Loop(), Ratio.FromPercent(60), 2).Assess(Sump.Job(1500, 90));
        var prices = new TreatmentPrices(perHour: 10, perKilowattHour: 0.5, perElement: 100);
        var cost = row.CostAt(prices);
        var energy = (row.Heat + row.Electricity).KilowattHours;
        cost.Total.ShouldBe(10 * row.RunTime.TotalHours + 0.5 * energy + 200, 1e-9);
        cost.IsComplete.ShouldBeFalse();
        cost.Items.Single(item => !item.HasPrice).Kind.ShouldBe(CostKind.LitresOfWaste);
        cost.Items.Single(item => item.Kind == CostKind.Elements).Cost.ShouldBe(200);
        row.CostAt(new TreatmentPrices()).Total.ShouldBe(0);
        row.CostAt(new TreatmentPrices(1, 1, 1, 1, 1)).IsComplete.ShouldBeTrue();
    }

    /// <summary>A treatment of the user's own, invented: bags of a drying agent hung into the tank, a gram of water an hour each.</summary>
    private sealed class DryingBags(int bags) : ITreatment
    {
        public string Name => "drying bags";

        public ContaminationForms Reaches => ContaminationForms.FreeWater | ContaminationForms.DissolvedWater;

        public TreatmentAssessment Assess(TreatmentJob job)
        {
            var kilograms =
                job.OilMassAt(job.Reservoir.Start)
                * (job.Contamination.Water - job.Target.Water!.Value).DecimalFractions;
            var time = TimeSpan.FromHours(kilograms.Grams / bags);
            return new TreatmentAssessment(
                this,
                TargetForecast.ReachedAfter(time),
                TargetForecast.Of(TreatmentOutcome.NotAsked),
                Sump.Ppm(5),
                time,
                elements: bags,
                cautions: [Caution.SpillsAndWaste]
            );
        }
    }

    [Fact]
    public void A_treatment_of_the_users_own_stands_beside_the_others()
    {
        var job = Sump.Job(200, 40);
        var table = TreatmentComparison.Of(job, new VacuumDehydration(Unit), new DryingBags(20));
        var own = table.Rows.Single(row => row.Treatment is DryingBags);
        own.MeetsTarget.ShouldBeTrue();
        own.RunTime.TotalHours.ShouldBe(2 * 866.8 * 160e-3 / 20, 0.05);
        table.Rows[0].ShouldBe(own);
        table.ToString().ShouldContain("drying bags");
    }

    [Fact]
    public void The_knob_that_is_worth_most_stands_on_top()
    {
        var job = Sump.Job(900, 150, Sump.Tank(start: 60, ingressGramPerHour: 40));
        var table = PlanSensitivity.Of(job, Sump.Unit(pascal: 10_000));
        table.Rows.Select(row => row.Knob).ShouldBe(Enum.GetValues<PlanKnob>(), ignoreOrder: true);
        KnobEffect Row(PlanKnob knob) => table.Rows.Single(row => row.Knob == knob);

        // 303 × 10 000/25 042 = 121 mg/kg: the target lies close above the floor, so that the floor sets the time.
        table.Plan.End.WaterFloor.PartsPerMillion.ShouldBe(121, 0.5);
        Row(PlanKnob.Vacuum).Plan.End.WaterFloor.PartsPerMillion.ShouldBe(90.7, 0.5);
        Row(PlanKnob.Vacuum).FloorDropMgPerKg.ShouldBe(30.2, 0.5);
        Row(PlanKnob.Flow).FloorDropMgPerKg.ShouldBe(0, 1e-6);
        Row(PlanKnob.WaterIngress).FloorDropMgPerKg.ShouldBe(0, 1e-6);
        Row(PlanKnob.WaterIngress).LevelDropMgPerKg.ShouldBeGreaterThan(10);
        table.Plan.Outcome.ShouldBe(TreatmentOutcome.IngressAboveTarget);
        table.Rows[0].MakesReachable.ShouldBeTrue();
        Row(PlanKnob.HeaterPower).MakesReachable.ShouldBeFalse();
        Row(PlanKnob.Vacuum).HasTimeSaved.ShouldBeFalse();
    }

    [Fact]
    public void A_limit_of_the_oil_caps_the_temperature_knob()
    {
        var table = PlanSensitivity.Of(Sump.Job(900, 150, oil: Sump.Oil(highest: 65)), Sump.Unit());
        var warmer = table.Rows.Single(row => row.Knob == PlanKnob.ProcessTemperature);
        warmer.IsCapped.ShouldBeTrue();
        warmer.TimeSaved.TotalHours.ShouldBe(0, 1e-9);
        table.Rows.ShouldNotContain(row => row.Knob == PlanKnob.WaterIngress);
        table.Rows[0].TimeSaved.TotalHours.ShouldBeGreaterThan(0.3);
        table.Rows.Where(row => row.HasTimeSaved).Count().ShouldBe(5);
    }

    /// <summary>Start at 5 °C: the flow is full flow × 700/ν, and the heater gives no more than that flow carries away.</summary>
    [Fact]
    public void Cold_heavy_oil_costs_hours()
    {
        ColdStart Start(ViscosityTemperatureLine heavy) =>
            ColdStart.Compare(
                Sump.Job(900, 120, Sump.Tank(start: 5, ambient: 5), Sump.Oil(line: heavy)),
                Sump.Unit(),
                Sump.Vg46
            );
        var (vg320, vg460) = (Start(Sump.Vg320), Start(Sump.Vg460));

        var first = vg460.Heavy.States[0];
        var viscosity = Sump.Vg460.ViscosityAt(Sump.Celsius(5)).Viscosity.Centistokes;
        first.Flow.LitersPerMinute.ShouldBe(20 * 700 / viscosity, 1e-9);
        viscosity.ShouldBeInRange(4000, 12_000);
        ((double)first.HeaterPower.Kilowatts).ShouldBeInRange(1, 5);
        first.ProcessTemperature.DegreesCelsius.ShouldBe(65, 1e-6);
        ((double)vg460.Light.States[0].HeaterPower.Kilowatts).ShouldBe(18, 1e-6);

        vg460.TimeLost.ShouldBeGreaterThan(vg320.TimeLost);
        vg320.TimeLost.TotalHours.ShouldBeGreaterThan(1);
        vg460.Heavy.HasFullFlow.ShouldBeTrue();
        vg460.Heavy.FullFlowTime.ShouldBeGreaterThan(vg320.Heavy.FullFlowTime);
        vg460.Light.FullFlowTime.TotalHours.ShouldBe(0);
        vg460.Heavy.IsViscosityExtrapolated.ShouldBeTrue();
        vg460.Light.IsViscosityExtrapolated.ShouldBeFalse();
        var full = Sump.Unit().Pump.ColdestAtFullFlow(Sump.Vg460).Temperature.DegreesCelsius;
        var around = vg460
            .Heavy.States.Where(state => Math.Abs((state.Time - vg460.Heavy.FullFlowTime).TotalHours) <= 1)
            .ToList();
        around.First().TankTemperature.DegreesCelsius.ShouldBeLessThan(full);
        around.Last().TankTemperature.DegreesCelsius.ShouldBeGreaterThan(full);
        ColdStart.Compare(Sump.Job(900, 120), Sump.Unit(), Sump.Vg46).TimeLost.TotalHours.ShouldBe(0, 1e-9);
    }

    /// <summary>Losses can hold thick oil at a cold balance, where the little flow carries no more heat than the tank loses.</summary>
    [Fact]
    public void A_tank_that_loses_too_much_stays_cold()
    {
        var tank = Sump.Tank(start: 5, ambient: 5, loss: 800);
        var stuck = PurificationPlan.Create(Sump.Job(900, 120, tank, Sump.Oil(line: Sump.Vg460)), Sump.Unit());
        var light = PurificationPlan.Create(Sump.Job(900, 120, tank), Sump.Unit());
        stuck.End.TankTemperature.DegreesCelsius.ShouldBeLessThan(light.End.TankTemperature.DegreesCelsius - 5);
        stuck.Last.TankTemperature.DegreesCelsius.ShouldBe(stuck.End.TankTemperature.DegreesCelsius, 0.2);
    }
}
