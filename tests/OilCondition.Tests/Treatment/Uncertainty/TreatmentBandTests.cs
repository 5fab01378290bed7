using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Uncertainty;

/// <summary>What uncertain inputs make of hours and floors. The station is invented.</summary>
public class TreatmentBandTests
{
    private const double Z90 = 1.2816;

    private static readonly TreatmentJob Warm = Sump.Job(200, 5, Sump.Tank(start: 65, ambient: 65, loss: 0));

    private static InputErrors Only(
        double removal = 0,
        double kilopascal = 0,
        double water = 0,
        double saturation = 0
    ) =>
        new(
            Ratio.FromDecimalFractions(water),
            Ratio.FromDecimalFractions(saturation),
            Ratio.FromDecimalFractions(removal),
            Ratio.Zero,
            Pressure.FromKilopascals(kilopascal),
            Ratio.Zero,
            Ratio.Zero,
            Ratio.Zero
        );

    [Fact]
    public void Without_errors_the_band_is_the_plan()
    {
        var plan = PurificationPlan.Create(Warm, Sump.Unit(pascal: 100));
        var band = plan.Band(Only());
        band.TimeP10!.Value.TotalHours.ShouldBe(plan.Arrival.Hours(), 1e-3);
        band.TimeP90!.Value.TotalHours.ShouldBe(plan.Arrival.Hours(), 1e-3);
        band.FloorP90.PartsPerMillion.ShouldBe(plan.End.WaterFloor.PartsPerMillion, 1e-9);
        band.Reached.DecimalFractions.ShouldBe(1);
    }

    /// <summary>
    /// By hand: ln(198.79/3.79)/0.42 = 9.43 h at η = 0.7. Transfer units −ln 0.3 = 1.204, 20 % more or less at one standard error: η at ±1.2816 of them is
    /// 1 − 0.3^1.2922 = 0.789 and 1 − 0.3^0.7739 = 0.606, hours 8.37 and 10.89.
    /// </summary>
    [Fact]
    public void An_uncertain_removal_spreads_the_hours()
    {
        var band = PurificationPlan.Create(Warm, Sump.Unit(pascal: 100)).Band(Only(removal: 0.2));
        band.TimeP10!.Value.TotalHours.ShouldBe(8.37, 0.2);
        band.TimeP50!.Value.TotalHours.ShouldBe(9.43, 0.05);
        band.TimeP90!.Value.TotalHours.ShouldBe(10.89, 0.3);
        band.FloorP10.ShouldBe(band.FloorP90);
    }

    /// <summary>
    /// 28 inHg at sea level: the floor at 65 °C is 302.94 × p/25 042 Pa, in proportion to the pressure, which weather and gauge leave open by 1.3 kPa of 6.51: 78.7
    /// times exp(±1.2816 × 0.1997), 61 to 102 mg/kg. Deep below it no gauge of the atmosphere is used, and the error is a fifth.
    /// </summary>
    [Fact]
    public void A_floor_has_the_band_of_its_gauge()
    {
        var plan = PurificationPlan.Create(Sump.Job(900, 150), Sump.Unit());
        var band = plan.Band(Only(kilopascal: 1.3));
        band.FloorP10.PartsPerMillion.ShouldBe(78.7 * Math.Exp(-Z90 * 0.1997), 3);
        band.FloorP90.PartsPerMillion.ShouldBe(78.7 * Math.Exp(Z90 * 0.1997), 4);
        band.FloorP50.PartsPerMillion.ShouldBe(78.7, 0.5);

        // A target between: reached in some cases only, and no time is claimed for nine in ten.
        var near = PurificationPlan.Create(Sump.Job(900, 90), Sump.Unit()).Band(Only(kilopascal: 1.3));
        near.Reached.DecimalFractions.ShouldBeInRange(0.6, 0.9);
        near.TimeP10.ShouldNotBeNull();
        near.TimeP90.ShouldBeNull();
        near.ToString().ShouldContain("reached in");
    }

    [Fact]
    public void The_band_is_the_same_every_time_and_grows_with_the_errors()
    {
        var plan = PurificationPlan.Create(Sump.Job(900, 150), Sump.Unit());
        var (first, again) = (plan.Band(), plan.Band(InputErrors.Usual));
        first.TimeP10.ShouldBe(again.TimeP10);
        first.TimeP90.ShouldBe(again.TimeP90);
        first.ToString().ShouldBe(again.ToString());
        first.TimeP10!.Value.ShouldBeLessThan(plan.Arrival.Time());
        first.TimeP90!.Value.ShouldBeGreaterThan(plan.Arrival.Time());
        var width = plan.Band(Only(water: 0.2)).TimeP90 - plan.Band(Only(water: 0.2)).TimeP10;
        width!.Value.ShouldBeGreaterThan(
            (plan.Band(Only(water: 0.05)).TimeP90 - plan.Band(Only(water: 0.05)).TimeP10)!.Value
        );
    }

    [Fact]
    public void Rows_of_a_comparison_carry_their_band_and_their_flags()
    {
        var loop = new SideLoop(Sump.Unit().Pump, Sump.Celsius(60), Power.FromKilowatts(4));
        var table = TreatmentComparison.Of(
            Sump.Job(900, 320, Sump.Tank(start: 5, ambient: 5), Sump.Oil(line: Sump.Vg320), emulsified: 0.1),
            new Coalescer(loop, Ratio.FromPercent(60), 1),
            new SettlingAndDraining(Length.FromMeters(1), Kit.Micrometres(200)),
            new VacuumDehydration(Sump.PlainUnit(kilowatt: 1.5))
        );
        foreach (var row in table.Rows)
        {
            row.Band.ShouldNotBeNull();
            row.Flags.HasFlag(TreatmentDoubts.Emulsion).ShouldBeTrue();
            row.Band!.FloorP10.ShouldBeLessThanOrEqualTo(row.Band.FloorP90);
        }

        var settled = table.Rows.Single(row => row.Treatment.Kind == TreatmentKind.SettlingAndDraining);
        settled.Band!.TimeP90!.Value.ShouldBeGreaterThan(1.5 * settled.Band.TimeP10!.Value);
        var vacuum = table.Rows.Single(row => row.Treatment.Kind == TreatmentKind.VacuumDehydration);
        vacuum.Flags.ShouldBe(
            TreatmentDoubts.Emulsion
                | TreatmentDoubts.SlowStart
                | TreatmentDoubts.ViscosityExtrapolated
                | TreatmentDoubts.HeaterLimited
                | TreatmentDoubts.HeldToRise
        );

        // A row by itself has none, and a gauge reading typed as absolute is asked about: 24 inHg is 81.3 kPa.
        new VacuumDehydration(Sump.Unit())
            .Assess(Sump.Job(900, 150))
            .Band.ShouldBeNull();
        var typed = new VacuumChamber(Pressure.FromInchesOfMercury(24));
        typed.IsPressureInDoubt.ShouldBeTrue();
        typed.ToString().ShouldContain("a gauge reading?");
        PurificationPlan
            .Create(Sump.Job(900, 150), Sump.Unit(chamber: typed), Sump.Coarse)
            .Flags.HasFlag(TreatmentDoubts.PressureInDoubt)
            .ShouldBeTrue();
        new VacuumChamber(Pressure.FromInchesOfMercury(29.92 - 24)).IsPressureInDoubt.ShouldBeFalse();
    }

    [Fact]
    public void Bad_input_is_named()
    {
        Kit.Refused(() => new InputErrors(water: Ratio.FromPercent(101)), "water");
        Kit.Refused(() => new InputErrors(chamberPressure: Pressure.FromKilopascals(21)), "chamberPressure");
        InputErrors.Usual.ToString().ShouldStartWith("water 8 %, saturation 15 %, removal 20 %");
    }
}
