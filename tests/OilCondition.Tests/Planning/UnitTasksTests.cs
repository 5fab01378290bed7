using OilCondition.Planning;
using OilCondition.Tests.Advice.Options;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Planning;

/// <summary>From the decisions of a plant to what its unit does. The station is invented; dates and places are as its file says, hours by hand.</summary>
public class UnitTasksTests
{
    private const string Ways =
        """, "travel": [ { "from": "hall", "to": "dam", "hours": 2 }, { "from": "hall", "to": "M3", "hours": 0.5 }, { "from": "dam", "to": "M3", "hours": 2 } ]""";

    private const string Crew = """, "crew": { "fromHour": 7, "toHour": 17, "days": ["mon", "tue", "fri"] }""";

    private static readonly DateTimeOffset AsOf = InventedYard.AsOf; // a Sunday, 06:00

    private static readonly DecisionOptions NoErrors = new(errors: InventedYard.NoErrors);

    /// <summary>M1 is beyond its alarm, M2 beyond its alert, M3 is sound: two tasks, of weights 3 and 1, each due at the risk date of its decision.</summary>
    [Fact]
    public void A_decision_that_takes_the_unit_is_a_task()
    {
        var (decisions, work) = Of(Plant(Ways + Crew), place: "dam");
        var (first, second) = (work.Tasks[0], work.Tasks[1]);

        work.Tasks.Select(task => (task.Id, task.Place, task.Weight)).ShouldBe([("M1", "hall", 3), ("M2", "dam", 1)]);
        work.Tasks.Select(task => task.Due).ShouldBe(decisions.Select(one => one.RiskDate));
        first.EarliestStart.ShouldBe(AsOf);
        (first.Connect, first.Disconnect).ShouldBe((TimeSpan.FromHours(3), TimeSpan.FromHours(3)));
        first.Process.ShouldBe(decisions[0].Choice!.Assessment!.Band!.TimeP90!.Value, TimeSpan.FromSeconds(1));
        first.Windows.ShouldBeEmpty();
        second.Process.ShouldBeLessThan(first.Process); // less water in half as much oil
        (work.Unit.Name, work.Unit.Place, work.Unit.Running).ShouldBe(("VDU", "dam", null));
        work.ToString().ShouldBe("VDU at dam: 2 tasks");
    }

    [Fact]
    public void Ways_and_crew_are_those_of_the_file()
    {
        var unit = Of(Plant(Ways + Crew), place: "dam", daysAhead: 7).Work.Unit;

        unit.Travel.Between("dam", "hall").ShouldBe(TimeSpan.FromHours(2));
        unit.CrewHours.Select(hours => hours.ToString())
            .ShouldBe([
                "2026-03-02 07:00 to 2026-03-02 17:00",
                "2026-03-03 07:00 to 2026-03-03 17:00",
                "2026-03-06 07:00 to 2026-03-06 17:00",
            ]);
    }

    /// <summary>By hand: the alarm goes first; the unit leaves the dam at once, and the crew connects it on Monday at 07:00.</summary>
    [Fact]
    public void The_plan_of_a_plant()
    {
        var work = Of(Plant(Ways + Crew), place: "dam").Work;
        var planned = UnitSchedule
            .Plan(work.Tasks, work.Unit, new SchedulingOptions(AsOf))
            .ShouldBeOfType<ScheduleOutcome.Planned>();

        planned.IsOptimal.ShouldBeTrue();
        planned.Schedule.Visits.Count.ShouldBe(2);
        planned.Schedule.Next!.ConnectStart.ShouldBe(AsOf.AddHours(25));
    }

    /// <summary>The vacuum unit must have the machine standing: windows are the outages of the machine that has some.</summary>
    [Fact]
    public void Where_the_machine_must_stand_its_outages_are_the_windows()
    {
        const string Outages =
            """, "outages": [ { "name": "spring", "from": "2026-03-10T06:00:00Z", "to": "2026-03-20T06:00:00Z" }, { "name": "autumn", "from": "2026-09-01T06:00:00Z", "to": "2026-09-09T06:00:00Z" } ]""";
        var vacuum = InventedYard.Vacuum.Replace(
            "\"connectHours\": 3",
            "\"connectHours\": 3, \"needsStandstill\": true"
        );
        var task = Of(Plant("", vacuum, firstSite: Outages), place: "anywhere").Work.Tasks[0];

        task.Windows.Select(window => window.ToString())
            .ShouldBe(["2026-03-10 06:00 to 2026-03-20 06:00", "2026-09-01 06:00 to 2026-09-09 06:00"]);
        task.EarliestStart.ShouldBe(new DateTimeOffset(2026, 3, 10, 6, 0, 0, TimeSpan.Zero));
    }

    /// <summary>Under way on M1 since yesterday: the unit is there, and M2 comes next. Nothing says when the water is out, so that the risk date stands in.</summary>
    [Fact]
    public void A_treatment_under_way_comes_first()
    {
        const string Run =
            """{ "machine": "M1", "kind": "vacuum-dehydration", "at": "2026-02-28T06:00:00Z", "measurand": "water-content", "target": 60, "equipment": "VDU" }""";
        var (decisions, work) = Of(Plant(Ways, events: Run));
        var running = work.Unit.Running.ShouldNotBeNull();

        (running.Task.Id, running.Task.Weight, work.Unit.Place).ShouldBe(("M1", 3, "hall"));
        running.ConnectedAt.ShouldBe(AsOf.AddDays(-1));
        running.ProcessEnd.ShouldBe(decisions[0].RiskDate);
        running.Task.Disconnect.ShouldBe(TimeSpan.FromHours(3));
        work.Tasks.ShouldHaveSingleItem().Id.ShouldBe("M2");
    }

    [Fact]
    public void A_treatment_by_other_equipment_does_not_bind_the_unit()
    {
        const string Run =
            """{ "machine": "M1", "kind": "vacuum-dehydration", "at": "2026-02-28T06:00:00Z", "measurand": "water-content", "target": 60 }""";

        Of(Plant("", events: Run)).Work.Unit.Running.ShouldBeNull();
    }

    [Fact]
    public void What_is_missing_is_named()
    {
        Should
            .Throw<ArgumentException>(() => Of(Plant(Ways)))
            .Message.ShouldContain("place is null; state where the unit is");
        Should
            .Throw<ArgumentException>(() => UnitTasks.Of([], Plant(""), "VDX"))
            .Message.ShouldContain("'VDX' is not the id of equipment; there are: VDU");
        Should.Throw<ArgumentException>(() => Of(Plant(""), daysAhead: 6)).Message.ShouldContain("7 to 3660 days");
        UnitTasks.Of([], Plant(""), "VDU").Tasks.ShouldBeEmpty();
    }

    private static (IReadOnlyList<TreatmentDecision> Decisions, UnitTasks Work) Of(
        Station station,
        string? place = null,
        int daysAhead = 60
    )
    {
        double[] water = [900, 300, 50];
        var assessments = station.Machines.Zip(
            water,
            (machine, mgPerKg) =>
                ConditionAssessor.Assess(
                    machine.History(
                        Enumerable
                            .Range(0, 3)
                            .Select(month => new OilSample(
                                $"{machine.Machine.Id} {month}",
                                AsOf.AddDays(-30 * month),
                                new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(mgPerKg) }
                            )),
                        []
                    ),
                    machine.Limits!,
                    new AssessmentOptions(AsOf)
                )
        );
        var decisions = TreatmentDecision.Of([.. assessments], station, NoErrors);
        return (decisions, UnitTasks.Of(decisions, station, "VDU", place, daysAhead));
    }

    private static Station Plant(
        string fields,
        string equipment = InventedYard.Vacuum,
        string firstSite = "",
        string events = ""
    ) =>
        Station.Parse(
            $$"""
            { "name": "invented", "asOf": "2026-03-01T06:00:00Z",
              "oils": [ { "id": "o", "name": "invented oil", "highestCelsius": 80,
                "new": { "viscosity-40c": 46, "viscosity-100c": 6.8, "density-15c": 870 },
                "saturation": { "points": [ { "celsius": 20, "mgPerKg": 300 }, { "celsius": 60, "mgPerKg": 1200 } ], "source": { "kind": "user-data", "text": "invented" } } } ],
              "limitSets": [ { "name": "l", "limits": [ {{InventedYard.Absolute("water-content", 200, 500)}} ] } ],
              "machines": [ {{Machine("M1", 1000, "\"place\": \"hall\"" + firstSite)}}, {{Machine(
                "M2",
                500,
                "\"place\": \"dam\""
            )}}, {{Machine("M3", 500, "\"powerKilowatts\": 100")}} ],
              "events": [ {{events}} ],
              "equipment": [ {{equipment}} ] {{fields}} }
            """
        );

    private static string Machine(string id, double litres, string site) =>
        $$"""{ "id": "{{id}}", "name": "bearing", "oil": "o", "oilLitres": {{litres}}, "runningCelsius": 40, "standstillCelsius": 25, "limits": "l", "tank": { "ambientCelsius": 15, "lossWattPerKelvin": 0 }, {{site}} }""";
}
