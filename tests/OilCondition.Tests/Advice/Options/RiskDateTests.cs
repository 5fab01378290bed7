using OilCondition.Prognosis;
using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>By when a treatment must be done.</summary>
public class RiskDateTests
{
    [Fact]
    public void A_rise_must_be_stopped_before_the_accepted_chance_of_an_alarm()
    {
        var yard = Dry(110, 128, 146, 170, 182, 205, 222, 240);
        var station = yard.Station();
        var assessment = yard.Assess(station);
        var life = assessment.States.Single().Lives.OfType<RemainingLife.Forecast>().Single();

        foreach (var percent in new[] { 5, 20 })
        {
            var decision = TreatmentDecision
                .Of(assessment, station, new DecisionOptions(acceptedRisk: Ratio.FromPercent(percent)))
                .ShouldHaveSingleItem();

            life.Crossing.TryAt(percent / 100.0, out var at).ShouldBeTrue();
            decision.RiskDate.ShouldBe(at);
            decision.RiskReason.ShouldContain($"reaches {percent} %");
        }
    }

    /// <summary>A slow rise may leave more years than a plan looks ahead: the task is sized for one of them.</summary>
    [Fact]
    public void A_date_years_ahead_is_sized_for_a_year()
    {
        var job = Dry(300, 300, 300).Decision().Job!;

        DecisionSizing
            .Of(job, [ProblemTopic.Water], TimeSpan.FromDays(4000))[0](Sentences.English)
            .ShouldBe("to be done within 8760 h");
    }

    [Fact]
    public void An_alarm_may_stand_for_a_stated_time()
    {
        Dry(510, 520, 530)
            .Decision(new DecisionOptions(alarmResponse: TimeSpan.FromDays(3)))
            .RiskDate.ShouldBe(InventedYard.AsOf.AddDays(3));
    }

    /// <summary>Free water at standstill comes out when the machine stands: at the next outage, if that is soon.</summary>
    [Theory]
    [InlineData("2026-03-10T06:00:00Z", "2026-03-10T06:00:00Z")]
    [InlineData("2026-06-10T06:00:00Z", "2026-03-31T06:00:00Z")]
    public void Free_water_at_standstill_must_be_gone_before_the_machine_stands(string outage, string expected)
    {
        var yard = new InventedYard
        {
            Equipment = InventedYard.Vacuum,
            Site = $$"""
                "outages": [ { "name": "planned", "from": "{{outage}}", "to": "2026-07-01T06:00:00Z" } ]
                """,
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, 120, 120, 120, 120, 120, 120)],
        };

        yard.Decision()
            .RiskDate.ShouldBe(DateTimeOffset.Parse(expected, System.Globalization.CultureInfo.InvariantCulture));
    }

    /// <summary>An oil that holds so much that nothing is free.</summary>
    private static InventedYard Dry(params double[] water) =>
        new()
        {
            Equipment = InventedYard.Vacuum,
            Saturation = """
                , "saturation": { "points": [ { "celsius": 20, "mgPerKg": 2000 }, { "celsius": 60, "mgPerKg": 6000 } ], "source": { "kind": "user-data", "text": "invented" } }
                """,
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, water)],
        };
}
