using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>Whether a way can be had, connected and done in time.</summary>
public class OptionTests
{
    private static readonly DecisionOptions Exactly = new(errors: InventedYard.NoErrors);

    /// <summary>An oil change of 950 L at 50 L/min: 38 min, with 2 h before and after 4.633 h.</summary>
    [Fact]
    public void The_first_outage_that_is_long_enough_is_taken()
    {
        var option = Change(
            """
            { "name": "short", "from": "2026-03-02T06:00:00Z", "to": "2026-03-02T10:00:00Z" },
            { "name": "long", "from": "2026-03-20T06:00:00Z", "to": "2026-03-20T16:00:00Z" }
            """
        );

        option.Outage!.Name.ShouldBe("long");
        option.Begins.ShouldBe(new DateTimeOffset(2026, 3, 20, 6, 0, 0, TimeSpan.Zero));
        (option.DoneP50!.Value - option.Begins!.Value).TotalHours.ShouldBe(2 + 38 / 60.0, 1e-6);
    }

    [Fact]
    public void An_outage_that_is_too_short_says_by_how_much()
    {
        var option = Change("""{ "name": "short", "from": "2026-03-02T06:00:00Z", "to": "2026-03-02T10:00:00Z" }""");

        option.Verdict.ShouldBe(OptionVerdict.OutageTooShort);
        option.RuledOut.ShouldBe("it takes 4.63 h, the longest outage ahead has 4 h: 0.633 h short");
        option.Begins.ShouldBeNull();
    }

    [Fact]
    public void An_outage_that_has_begun_counts_from_now_on()
    {
        var option = Change("""{ "name": "now", "from": "2026-02-20T06:00:00Z", "to": "2026-03-01T10:00:00Z" }""");

        option.Verdict.ShouldBe(OptionVerdict.OutageTooShort);
        Change("""{ "name": "now", "from": "2026-02-20T06:00:00Z", "to": "2026-03-01T11:00:00Z" }""")
            .Begins.ShouldBe(InventedYard.AsOf);
    }

    [Fact]
    public void Attended_work_goes_on_in_the_reachable_hours_only()
    {
        var attended = InventedYard.Drums.Replace(
            "\"connectHours\": 2",
            "\"connectHours\": 2, \"attended\": true",
            StringComparison.Ordinal
        );
        var option = Wet(attended, "\"reachableHoursPerDay\": 8")
            .Decision(Exactly)
            .Options.Single(one => one.Id == "DRUMS");

        // 38 min of work at 8 h a day: 1.9 h by the clock.
        (option.DoneP50!.Value - option.Begins!.Value).TotalHours.ShouldBe(2 + 3 * 38 / 60.0, 1e-6);
    }

    /// <summary>Motor 4 kW, heater 12 kW: with 10 kW the heater is turned down to 6, with 3 the unit does not run.</summary>
    [Fact]
    public void With_too_little_power_the_heater_is_turned_down_or_the_unit_stays_out()
    {
        TreatmentOption With(string power) =>
            Wet(InventedYard.Vacuum, power).Decision(Exactly).Options.Single(one => one.Id == "VDU");
        var full = With("\"powerKilowatts\": 16");
        var less = With("\"powerKilowatts\": 10");
        var none = With("\"powerKilowatts\": 3");

        ((OilCondition.Treatment.VacuumDehydration)less.Assessment!.Treatment).Unit.HeaterPower.Kilowatts.ShouldBe(6);
        less.Assessment.Band!.TimeP50.ShouldNotBeNull();
        less.Assessment.Band.TimeP50!.Value.ShouldBeGreaterThan(full.Assessment!.Band!.TimeP50!.Value);
        none.Verdict.ShouldBe(OptionVerdict.NotEnoughPower);
        none.RuledOut.ShouldBe("it needs 4 kW without its heater, 3 kW are at hand");
    }

    [Fact]
    public void A_store_that_holds_too_little_is_said_with_both_amounts()
    {
        var few = InventedYard.Drums.Replace("\"connectHours\": 2", "\"litresInStock\": 600", StringComparison.Ordinal);
        var option = Wet(few).Decision(Exactly).Options.Single(one => one.Id == "DRUMS");

        option.Verdict.ShouldBe(OptionVerdict.NotEnoughInStock);
        option.RuledOut.ShouldBe("it takes 950 L of new oil, the store holds 600 L");
    }

    [Fact]
    public void What_is_not_connected_here_is_not_planned()
    {
        TreatmentOption On(string machine) =>
            Wet(
                    InventedYard.Vacuum.Replace(
                        "\"id\"",
                        $"\"connectsTo\": [ \"{machine}\" ], \"id\"",
                        StringComparison.Ordinal
                    )
                )
                .Decision()
                .Options.Single(one => one.Id == "VDU");

        On("M1").Verdict.ShouldBe(OptionVerdict.Meets);
        On("M2").Verdict.ShouldBe(OptionVerdict.CannotBeConnected);
        On("M2").Assessment.ShouldBeNull();
    }

    /// <summary>An alarm may stand for seven days; the unit comes on the eighth.</summary>
    [Fact]
    public void What_comes_too_late_is_late_and_not_ruled_out()
    {
        var late = InventedYard.Vacuum.Replace("\"connectHours\": 3", "\"leadDays\": 8", StringComparison.Ordinal);
        var decision = Wet(late, water: 600).Decision();

        decision.RiskDate.ShouldBe(InventedYard.AsOf.AddDays(7));
        decision.Choice!.Verdict.ShouldBe(OptionVerdict.MeetsLate);
        decision.Choice.ProbabilityInTime.DecimalFractions.ShouldBe(0);
        decision.Sizing.ShouldNotBeEmpty();
    }

    /// <summary>m (c_alert − c_end)/r: 870 kg × (0.2 × S(10 °C)) mg/kg at 1 g a day.</summary>
    [Fact]
    public void The_water_is_back_when_what_comes_in_has_filled_the_margin()
    {
        var yard = Wet(
            InventedYard.Vacuum,
            tank: "\"ambientCelsius\": 15, \"lossWattPerKelvin\": 0, \"waterIngressGramsPerHour\": 0.041666667"
        );
        var option = yard.Decision(Exactly).Options.Single(one => one.Id == "VDU");
        var job = yard.Decision(Exactly).Job!;
        var saturation = yard.Station()
            .Machines[0]
            .Machine.Oil.SaturationCurve!.SaturationAt(Temperature.FromDegreesCelsius(10))
            .Content.PartsPerMillion;

        var days = 0.2 * saturation * 1e-6 * job.OilMass.Kilograms / 0.001;
        var back = option.Rebound.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();
        (back.Estimate - option.DoneP50!.Value).TotalDays.ShouldBe(days, 1e-3);
        yard.Decision(Exactly).ToString().ShouldContain("It does not last");
    }

    [Fact]
    public void The_floor_is_told_where_water_is_to_be_reached_and_nowhere_else()
    {
        var option = Wet(InventedYard.Vacuum).Decision(Exactly).Options.Single(one => one.Id == "VDU");
        option.Floor.ShouldBe(option.Assessment!.WaterFloor);
        Wet(InventedYard.Vacuum).Decision(Exactly).ToString().ShouldContain("floor ");

        // Dirt in an oil without a curve of its own: a floor by another oil's curve would be a figure of nothing.
        var dirty = new InventedYard
        {
            Saturation = "",
            Limits = InventedYard.Absolute("particles-4um", 2500, 20_000),
            Equipment = InventedYard.Vacuum + "," + InventedYard.Loop,
            Readings = [.. InventedYard.Counts(8000, 1200, 100)],
        }.Decision(Exactly);
        dirty.Options.ShouldAllBe(one => !one.Floor.HasValue);
        dirty.ToString().ShouldNotContain("floor ");
    }

    /// <summary>870 kg from 300 to 53 mg/kg: 215 g of water, a cupful.</summary>
    [Fact]
    public void How_much_water_comes_out_is_said()
    {
        var decision = Wet(InventedYard.Vacuum).Decision(Exactly);

        var grams = decision.Job!.OilMass.Kilograms * (300 - decision.Target.Water!.Value.PartsPerMillion) / 1000;
        decision.Choice!.Assessment!.WaterRemoved.Milliliters.ShouldBe(grams / 0.9982, 0.5);
        decision.Recommendation.ShouldContain("takes out 210 mL of water");
    }

    [Fact]
    public void Cautions_are_said_once_and_the_plant_decides()
    {
        var text = Wet(InventedYard.Vacuum).Decision().ToString();

        text.Split('\n').Count(line => line.Contains("Hot oil", StringComparison.Ordinal)).ShouldBe(1);
        text.ShouldContain("This is advice. The plant decides; makers' limits");
        text.Split('\n').ShouldAllBe(line => line.Length <= 100);
    }

    private static TreatmentOption Change(string outages) =>
        Wet(InventedYard.Drums, $"\"outages\": [ {outages} ]")
            .Decision(Exactly)
            .Options.Single(one => one.Id == "DRUMS");

    private static InventedYard Wet(
        string equipment,
        string site = "",
        double water = 300,
        string tank = "\"ambientCelsius\": 15, \"lossWattPerKelvin\": 0"
    ) =>
        new()
        {
            Equipment = equipment,
            Site = site,
            Tank = tank,
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, water, water, water)],
        };
}
