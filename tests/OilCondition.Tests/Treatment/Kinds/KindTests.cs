using OilCondition.Cleanliness;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>The list of kinds, the classes and the cautions belong together: a new kind is one class, one member and one line of cautions.</summary>
public class KindTests
{
    private static readonly SideLoop Loop = new(
        new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(40), KinematicViscosity.FromCentistokes(700))
    );

    /// <summary>One of each kind.</summary>
    internal static ITreatment[] All { get; } =
    [
        new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(100)),
        new Centrifuge(Loop, Area.FromSquareMeters(3000), Length.FromMicrometers(20), Length.FromMicrometers(3)),
        new Coalescer(Loop, Ratio.FromPercent(60), 2),
        new WaterAbsorbingElements(Loop, Ratio.FromPercent(50), Volume.FromLiters(0.5)),
        new VacuumDehydration(Sump.Unit()),
        new HeadSpacePurge(
            MassFlow.FromKilogramsPerHour(5),
            HumidAir.FromDewPoint(Sump.Celsius(20), Sump.Celsius(-40)),
            StandardAtmosphere.SeaLevel,
            Ratio.FromPercent(60)
        ),
        new FineFiltration(Loop, Sump.Filter, 1),
        new DrainAndRefill(
            Ratio.FromPercent(5),
            Sump.Ppm(40),
            ParticleLevels.FromCode(CleanlinessCode.Parse("17/15/12")),
            VolumeFlow.FromLitersPerMinute(60)
        ),
    ];

    [Fact]
    public void Every_kind_has_one_class_and_every_class_its_kind()
    {
        var classes = typeof(ITreatment)
            .Assembly.GetTypes()
            .Where(type => type is { IsClass: true, IsPublic: true } && typeof(ITreatment).IsAssignableFrom(type))
            .Where(type => type != typeof(TreatmentTrain)); // made of treatments that have kinds

        All.Select(one => one.Kind!.Value).ShouldBe(Enum.GetValues<TreatmentKind>(), ignoreOrder: true);
        All.Select(one => one.GetType()).ShouldBe(classes, ignoreOrder: true);
        All.ShouldAllBe(one => one.GetType().Name == one.Kind.ToString());
    }

    /// <summary>No row comes without the hot, the electric and the wet dangers that go with its work.</summary>
    [Fact]
    public void Every_row_carries_the_cautions_of_its_kind()
    {
        var job = Sump.Job(1500, 90, targetCode: "18/16/13");
        foreach (var treatment in All)
        {
            var row = treatment.Assess(job);
            row.Cautions.ShouldBeSubsetOf(CautionsOf.Treatment(treatment.Kind!.Value));
            row.Cautions.ShouldContain(Caution.MakersLimits);
            row.Cautions.ShouldContain(Caution.LocalCodes);
            row.Cautions.ShouldContain(Caution.SpillsAndWaste);
            row.Cautions.ShouldContain(Caution.ElectricalIsolation);
        }

        CautionsOf.Treatment(TreatmentKind.VacuumDehydration).ShouldContain(Caution.Vacuum);
        CautionsOf.Treatment(TreatmentKind.VacuumDehydration).ShouldContain(Caution.FlashPoint);
        CautionsOf.Treatment(TreatmentKind.HeadSpacePurge).ShouldContain(Caution.FlashPoint);
        CautionsOf.Treatment(TreatmentKind.Centrifuge).ShouldContain(Caution.HotOil);
        CautionsOf.Treatment(TreatmentKind.DrainAndRefill).ShouldContain(Caution.HotOil);
    }

    /// <summary>What a treatment does not reach it leaves as it is, and says so.</summary>
    [Fact]
    public void What_a_treatment_does_not_reach_is_not_touched()
    {
        var job = Sump.Job(1500, 90, targetCode: "18/16/13");
        foreach (var treatment in All.Where(one => !one.Reaches.HasFlag(ContaminationForms.Particles)))
        {
            treatment.Assess(job).WhyNotParticles!.Value.ShouldBeOneOf(WhyNot.NotTouched, WhyNot.DensityNotStated);
        }

        new FineFiltration(Loop, Sump.Filter, 1).Assess(job).WhyNotWater.ShouldBe(WhyNot.NotTouched);
    }

    [Fact]
    public void An_oil_change_is_recorded_as_one() =>
        Should
            .Throw<ArgumentException>(() =>
                new TreatmentRun(
                    new DateTimeOffset(2025, 3, 1, 0, 0, 0, TimeSpan.Zero),
                    null,
                    TreatmentKind.DrainAndRefill,
                    Measurands.WaterContent,
                    100
                )
            )
            .ParamName.ShouldBe("kind");
}
