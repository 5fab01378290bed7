using OilCondition.Cleanliness;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Comparison;

/// <summary>All treatments in one table, and their costs. The station is invented.</summary>
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
        TreatmentAssessment Row(TreatmentKind kind) => table.Rows.Single(row => row.Treatment.Kind == kind);

        table.Rows.Count.ShouldBe(8);
        table
            .Rows.Where(row => row.MeetsTarget)
            .Select(row => row.Treatment.Name)
            .ShouldBe(["drain and refill", "vacuum dehydration"]);
        Row(TreatmentKind.VacuumDehydration).Water.ShouldBeExpected();
        Row(TreatmentKind.SettlingAndDraining).WhyNotWater.ShouldBe(WhyNot.EmulsionStays);
        Row(TreatmentKind.Coalescer).WhyNotWater.ShouldBe(WhyNot.EmulsionStays);
        Row(TreatmentKind.Centrifuge).WhyNotWater.ShouldBe(WhyNot.FloorAboveTarget);
        Row(TreatmentKind.WaterAbsorbingElements).Water.ShouldBeExpected();
        Row(TreatmentKind.WaterAbsorbingElements).WhyNotParticles.ShouldBe(WhyNot.NotTouched);
        Row(TreatmentKind.FineFiltration).Particles.ShouldBeExpected();
        Row(TreatmentKind.DrainAndRefill).NewOil.Liters.ShouldBe(3800, 1e-6);
        table.Rows.ShouldAllBe(row => row.Cautions.Count > 0);

        // Below saturation at 20 °C (52.9 mg/kg) the separators are out, whatever the form.
        var dry = All(Sump.Job(1500, 45));
        dry.Rows.Where(row => row.WhyNotWater is null)
            .ShouldAllBe(row => row.Treatment.Reaches.HasFlag(ContaminationForms.DissolvedWater));
        dry.Rows.Single(row => row.Treatment.Kind == TreatmentKind.WaterAbsorbingElements)
            .WhyNotWater.ShouldBe(WhyNot.FloorAboveTarget);
    }

    [Fact]
    public void The_table_prints_one_line_a_treatment()
    {
        var lines = All(Sump.Job(1500, 90)).ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        lines.Length.ShouldBe(9);
        lines[0].ShouldStartWith("treatment");
        lines.ShouldContain(line =>
            line.StartsWith("vacuum dehydration", StringComparison.Ordinal) && line.Contains(" in ")
        );

        // Ruled out: why, its floor, and no hours and no bill.
        lines.ShouldContain(line =>
            line.StartsWith("fine filtration", StringComparison.Ordinal)
            && line.Contains(" not touched ")
            && line.EndsWith(" -      -          -", StringComparison.Ordinal)
        );
        lines[0].Length.ShouldBeLessThanOrEqualTo(100);
        lines.Select(line => line.Length).Distinct().Count().ShouldBe(1);
    }

    [Fact]
    public void The_row_of_the_vacuum_unit_is_its_plan()
    {
        var job = Sump.Job(1500, 90, targetCode: "16/14/11");
        var plan = PurificationPlan.Create(job, Unit);
        var row = new VacuumDehydration(Unit).Assess(job);
        row.RunTime!.Value.TotalHours.ShouldBe(plan.Arrival.Hours(), 1e-5 * plan.Arrival.Hours());
        row.Heat.KilowattHours.ShouldBe(plan.Last.HeaterEnergy.KilowattHours, 1e-3);
        row.Electricity.KilowattHours.ShouldBe(4 * plan.Arrival.Hours(), 1e-3);
        row.WaterFloor.ShouldBe(plan.End.WaterFloor);

        // A part that is never reached does not hide the other.
        var half = new VacuumDehydration(Sump.Unit()).Assess(job);
        half.WhyNotParticles.ShouldBe(WhyNot.NotTouched);
        half.RunTime!.Value.TotalHours.ShouldBe(half.Water.Hours(), 1e-9);
        half.Heat.KilowattHours.ShouldBeInRange(30, 80);
    }

    /// <summary>Costs are the user's figures times hours, kWh, elements and litres, and nothing else.</summary>
    [Fact]
    public void Costs_come_from_the_users_own_prices()
    {
        var row = new Coalescer(Loop(), Ratio.FromPercent(60), 2).Assess(Sump.Job(1500, 90));
        var prices = new TreatmentPrices(perHour: 10, perKilowattHour: 0.5, perElement: 100);
        row.TryCostAt(prices, out var cost).ShouldBeTrue();
        var energy = (row.Heat + row.Electricity).KilowattHours;
        cost.Total.ShouldBe(10 * row.RunTime!.Value.TotalHours + 0.5 * energy + 200, 1e-9);
        cost.IsComplete.ShouldBeFalse();
        cost.Items.Single(item => item.Cost is null).Name.ShouldBe("waste");
        cost.Items.Single(item => item.Name == "elements").Cost.ShouldBe(200);
        row.TryCostAt(new TreatmentPrices(), out var unpriced).ShouldBeTrue();
        unpriced.Total.ShouldBe(0);
        row.TryCostAt(new TreatmentPrices(1, 1, 1, 1, 1), out var all).ShouldBeTrue();
        all.IsComplete.ShouldBeTrue();

        // What reaches nothing has no cost, not one of 0.
        new Coalescer(Loop(), Ratio.FromPercent(60), 2)
            .Assess(Sump.Job(1500, 10))
            .TryCostAt(prices, out _)
            .ShouldBeFalse();
    }

    /// <summary>A treatment of the user's own, invented: bags of a drying agent hung into the tank, a gram of water an hour each.</summary>
    private sealed class DryingBags(int bags) : ITreatment
    {
        public string Name => "drying bags";

        public TreatmentKind? Kind => null;

        public ContaminationForms Reaches => ContaminationForms.FreeWater | ContaminationForms.DissolvedWater;

        public TreatmentAssessment Assess(TreatmentJob job)
        {
            var kilograms = job.OilMass * (job.Contamination.Water - job.Target.Water!.Value).DecimalFractions;
            var time = TimeSpan.FromHours(kilograms.Grams / bags);
            return new TreatmentAssessment(
                this,
                job,
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
        own.RunTime!.Value.TotalHours.ShouldBe(2 * 866.8 * 160e-3 / 20, 0.05);
        table.Rows[0].ShouldBe(own);
        table.ToString().ShouldContain("drying bags");
    }
}
