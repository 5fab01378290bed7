using System.Reflection;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;
using Outcome = OilCondition.Treatment.PlanSizing.SizingOutcome;
using Setting = OilCondition.Treatment.PlanSizing.Setting;

namespace OilCondition.Tests.Treatment.Sizing;

/// <summary>
/// Warm oil, no losses, no ingress: t = V/(η Q) ln((200 − f)/(5 − f)), f = 302.94 × 100/25 042 = 1.21 mg/kg, 9.43 h at 20 L/min (the closed form beside the plan's
/// own tests). So half the time takes twice the flow.
/// </summary>
public class PlanSizingTests
{
    private static readonly TreatmentJob Warm = Sump.Job(200, 5, Sump.Tank(start: 65, ambient: 65, loss: 0));

    private static readonly PurificationUnit Unit = Sump.Unit(pascal: 100);

    private static PlanSizing.Row Row(PlanSizing sizing, Setting setting) =>
        sizing.Rows.Single(row => row.Setting == setting);

    [Fact]
    public void Half_the_time_takes_twice_the_flow()
    {
        var hours = Math.Log(198.79 / 3.79) / 0.42;
        var sizing = PlanSizing.Of(Warm, Unit, TimeSpan.FromHours(hours / 2));
        var flow = Row(sizing, Setting.Flow);

        flow.Outcome.ShouldBe(Outcome.Sized);
        flow.Size!.Value.ShouldBe(40, 0.2);
        flow.AsItIs.ShouldBe(20, 1e-9);
        flow.Time!.Value.TotalHours.ShouldBeInRange(0.99 * hours / 2, hours / 2);
        Row(sizing, Setting.WholeUnit).Size!.Value.ShouldBe(2, 0.01);

        // Oil that is warm needs no heater, and a floor of 1.21 mg/kg is not what holds it up.
        Row(sizing, Setting.HeaterPower).Outcome.ShouldBe(Outcome.NoSizeDoes);
        Row(sizing, Setting.ChamberPressure).Outcome.ShouldBe(Outcome.NoSizeDoes);
        Row(sizing, Setting.HeaterPower).Time!.Value.TotalHours.ShouldBe(hours, 0.02 * hours);
    }

    [Fact]
    public void A_size_that_is_told_is_just_enough_on_the_plan()
    {
        var job = Sump.Job(800, 100);
        var unit = Sump.Unit(litrePerMinute: 60, kilowatt: 9);
        var row = Row(PlanSizing.Of(job, unit, TimeSpan.FromHours(12)), Setting.HeaterPower);

        row.Outcome.ShouldBe(Outcome.Sized);
        Hours(row.Size!.Value).ShouldBeLessThanOrEqualTo(12.01);
        Hours(0.97 * row.Size.Value).ShouldBeGreaterThan(12);

        double Hours(double kilowatt) =>
            PurificationPlan
                .Create(job, Sump.Unit(litrePerMinute: 60, kilowatt: kilowatt))
                .Arrival.TryEstimate(out var time)
                ? time.TotalHours
                : double.MaxValue;
    }

    /// <summary>Floor 302.94 p/25 042 mg/kg: a vacuum whose floor is the target never gets there, one that is deep enough does, and sweep air helps too.</summary>
    [Fact]
    public void A_floor_above_the_target_is_lowered_by_vacuum_or_air_only()
    {
        var sizing = PlanSizing.Of(
            Sump.Job(200, 50, Sump.Tank(start: 65, ambient: 65, loss: 0)),
            Sump.Unit(pascal: 6510),
            TimeSpan.FromHours(9)
        );
        var pressure = Row(sizing, Setting.ChamberPressure);
        var flow = Row(sizing, Setting.Flow);
        var air = Row(sizing, Setting.SweepAir);

        // ln((200 − f)/(50 − f)) = 0.42 · 9 gives f = 46.5 mg/kg, 38.4 hPa.
        pressure.Size!.Value.ShouldBe(38.4, 0.6);
        pressure.AsItIs.ShouldBe(65.1, 1e-9);
        air.Outcome.ShouldNotBe(Outcome.NoSizeDoes);
        air.AsItIs.ShouldBe(0);
        flow.Outcome.ShouldBe(Outcome.NoSizeDoes);
        flow.WhyNot.ShouldBe(WhyNot.FloorAboveTarget);
        flow.Time.ShouldBeNull();
        flow.ToString().ShouldBe("flow: no size does (floor above target)");
    }

    [Fact]
    public void With_much_time_any_size_does_and_a_unit_without_heater_has_no_row_for_it()
    {
        var sizing = PlanSizing.Of(Warm, Sump.Unit(pascal: 100, kilowatt: 0), TimeSpan.FromHours(1000));

        sizing.Rows.ShouldAllBe(row => row.Outcome == Outcome.AnySizeDoes || row.Setting == Setting.ChamberPressure);
        sizing.Rows.ShouldNotContain(row => row.Setting == Setting.HeaterPower);
        Row(sizing, Setting.Flow).ToString().ShouldBe("flow: any size does");
    }

    [Fact]
    public void More_time_never_asks_for_more()
    {
        var sizes = new[] { 3.0, 5, 8, 12 }.Select(hours =>
            Row(PlanSizing.Of(Warm, Unit, TimeSpan.FromHours(hours)), Setting.Flow).Size ?? 0
        );

        sizes.ToArray().ShouldBeInOrder(SortDirection.Descending);
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Kit.Refused(() => PlanSizing.Of(Warm, Unit, TimeSpan.Zero), "within");
        Should.Throw<ArgumentNullException>(() => PlanSizing.Of(null!, Unit, TimeSpan.FromHours(1)));
        Should.Throw<ArgumentNullException>(() => PlanSizing.Of(Warm, null!, TimeSpan.FromHours(1)));
    }

    /// <summary>A new figure of a unit, a chamber or a reservoir must be handed on by its With or ChamberParts: then raise its number here.</summary>
    [Theory]
    [InlineData(typeof(PurificationUnit), 11)]
    [InlineData(typeof(VacuumChamber), 4)]
    [InlineData(typeof(Reservoir), 9)]
    public void No_figure_is_lost_where_one_is_changed(Type type, int figures) =>
        type.GetConstructors(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public)
            .Max(constructor => constructor.GetParameters().Length)
            .ShouldBe(figures);

    /// <summary>A unit copied with nothing changed plans the same: no setting is lost on the way.</summary>
    [Fact]
    public void A_copied_unit_is_the_same_unit()
    {
        var job = Sump.Job(800, 60, targetCode: "18/16/13");
        var unit = Sump.Unit(
            chamber: new VacuumChamber(
                Pressure.FromPascals(4000),
                SweepAir.Dry(MassFlow.FromKilogramsPerHour(1)),
                VolumeFlow.FromCubicMetersPerHour(60)
            ).WithCondenserBeforePump(Sump.Celsius(15)),
            filter: Sump.Filter,
            startViscosity: 2000,
            motorKilowatt: 3
        );
        var copy = unit.With(chamber: unit.Chamber.With());

        copy.ToString().ShouldBe(unit.ToString());
        copy.StartViscosity.ShouldBe(unit.StartViscosity);
        copy.MotorPower.ShouldBe(unit.MotorPower);
        PurificationPlan.Create(job, copy).ToString().ShouldBe(PurificationPlan.Create(job, unit).ToString());
        PurificationPlan.Create(job, copy).Last.ToString().ShouldBe(PurificationPlan.Create(job, unit).Last.ToString());
    }
}
