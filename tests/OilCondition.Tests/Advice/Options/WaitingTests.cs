using OilCondition.Prognosis;

namespace OilCondition.Tests.Advice.Options;

/// <summary>What waiting costs: hours in free water by hand, chances as the forecast gives them, and what one more sample would change.</summary>
public class WaitingTests
{
    /// <summary>
    /// At 40 °C the oil holds 209 mg/kg (A − B/T through the two points). 100 rises to 300 in 100 days: above it for (300 − 209)/200 of them, 45.5 days.
    /// </summary>
    [Fact]
    public void Hours_in_free_water_are_read_from_straight_lines()
    {
        var waiting = Decision((100, 100), (0, 300)).Waiting;

        var b = Math.Log(4) / (1 / 293.15 - 1 / 333.15);
        double Saturation(double celsius) => 100 * Math.Exp(b * (1 / 293.15 - 1 / (celsius + 273.15)));
        waiting.FreeWaterSoFar!.Value.TotalDays.ShouldBe(100 * (300 - Saturation(40)) / 200, 0.01);
        waiting.FreeIfStoppedSoFar!.Value.TotalDays.ShouldBe(
            100,
            0.01,
            "100 mg/kg lie above the 66 of 10 °C from the start"
        );
    }

    [Fact]
    public void A_treatment_is_no_straight_line()
    {
        var yard = new InventedYard
        {
            Equipment = InventedYard.Vacuum,
            Events =
                """{ "machine": "M1", "kind": "vacuum-dehydration", "at": "2026-01-10T06:00:00Z", "endedAt": "2026-01-11T06:00:00Z", "measurand": "water-content", "target": 60 }""",
            Readings =
            [
                (60, Measurands.WaterContent, 300),
                (48, Measurands.WaterContent, 70),
                (24, Measurands.WaterContent, 150),
                (0, Measurands.WaterContent, 205),
            ],
        };

        // 300 mg/kg stood from 31 December 06:00 until the run began on 10 January, ten days; nothing after it is free at 40 °C.
        yard.Decision().Waiting.FreeWaterSoFar!.Value.TotalDays.ShouldBe(10, 1e-6);
    }

    [Fact]
    public void Chances_before_an_outage_are_those_of_the_forecast()
    {
        var yard = new InventedYard
        {
            Equipment = InventedYard.Vacuum,
            Site = """
                "outages": [ { "name": "late", "from": "2026-09-01T06:00:00Z", "to": "2026-09-05T06:00:00Z" }, { "name": "early", "from": "2026-05-01T06:00:00Z", "to": "2026-05-05T06:00:00Z" } ]
                """,
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, 110, 128, 146, 170, 182, 205, 222, 240)],
        };
        var station = yard.Station();
        var assessment = yard.Assess(station);
        var decision = TreatmentDecision.Of(assessment, station).ShouldHaveSingleItem();

        decision.Waiting.HasOutages.ShouldBeTrue();
        decision.Waiting.Steps.Select(step => step.Name).ShouldBe(["early", "late"]);
        var life = assessment.States.Single().Lives.OfType<RemainingLife.Forecast>().Single();
        foreach (var step in decision.Waiting.Steps)
        {
            step.ChanceOfAlarm!.Value.DecimalFractions.ShouldBe(life.Crossing.ChanceBefore(step.At), 1e-12);
            step.ChanceOfAlert!.Value.DecimalFractions.ShouldBe(1, "240 lies beyond the alert figure of 200");
            step.FreeWaterToCome!.Value.ShouldBe(
                step.At - InventedYard.AsOf,
                "240 lies above the 209 that 40 °C holds"
            );
        }
    }

    /// <summary>
    /// The mean of 210 and a second reading lies at 210 e^(z 0.08 √2/2): z = −1.28, −0.52, 0, 0.52, 1.28 give 195.3, 203.9, 210, ... Below the alert figure of
    /// 200 nothing is needed, if standstill is warm enough to hold it.
    /// </summary>
    [Fact]
    public void One_more_sample_near_the_limit_may_change_the_choice()
    {
        var near = Sampled(210);
        near.Choices.ShouldBe(["none", "VDU", "VDU", "VDU", "VDU"]);
        near.ChangesIn.Percent.ShouldBe(20);

        var far = Sampled(300);
        far.IsWorthTaking.ShouldBeFalse();
        far.ToString().ShouldBe("One more sample would not change the choice.");
    }

    private static TreatmentDecision.SampleValue Sampled(double water)
    {
        var yard = new InventedYard
        {
            Equipment = InventedYard.Vacuum,
            Saturation = """
                , "saturation": { "points": [ { "celsius": 20, "mgPerKg": 2000 }, { "celsius": 60, "mgPerKg": 6000 } ], "source": { "kind": "user-data", "text": "invented" } }
                """,
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, water, water, water)],
        };
        return yard.Decision().OneMoreSample.ShouldNotBeNull();
    }

    private static TreatmentDecision Decision(params (double DaysAgo, double Water)[] readings) =>
        new InventedYard
        {
            Equipment = InventedYard.Vacuum,
            Readings = [.. readings.Select(one => (one.DaysAgo, Measurands.WaterContent, one.Water))],
        }.Decision();
}
