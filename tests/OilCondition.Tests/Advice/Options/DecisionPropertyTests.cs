using System.Text.Json;
using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>What holds of every decision, on drawn machines: levels, rises, equipment, sites and prices.</summary>
public class DecisionPropertyTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Verdict_dates_and_chances_agree(int seed)
    {
        foreach (var decision in Drawn(seed).Decide())
        {
            Check(decision, $"seed {seed}");
        }
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes_and_the_json_tells_what_the_page_tells()
    {
        const int Seed = 3;
        var (one, other) = (Drawn(Seed).Decide(), Drawn(Seed).Decide());
        for (var i = 0; i < one.Count; i++)
        {
            other[i].ToJson().ShouldBe(one[i].ToJson(), $"seed {Seed}");
            other[i].ToString().ShouldBe(one[i].ToString(), $"seed {Seed}");
            one[i].ToString().Split('\n').ShouldAllBe(line => line.Length <= 100, $"seed {Seed}");
            using var json = JsonDocument.Parse(one[i].ToJson());
            var root = json.RootElement;
            (root.TryGetProperty("choice", out var choice) ? choice.GetString() : null).ShouldBe(one[i].Choice?.Id);
            root.GetProperty("options").GetArrayLength().ShouldBe(one[i].Options.Count);
            root.GetProperty("recommendation").GetString()!.Length.ShouldBeGreaterThan(10);
            root.GetProperty("cautions")
                .GetArrayLength()
                .ShouldBe(one[i].UnderWay?.Cautions.Count ?? one[i].Choice?.Assessment?.Cautions.Count ?? 0);
            root.GetProperty("notice").GetString()!.ShouldStartWith("This is advice.");
        }
    }

    private static void Check(TreatmentDecision decision, string seed)
    {
        decision.Problems.ShouldBeSubsetOf(decision.Assessment.Problems, seed);
        decision.RiskDate.ShouldBeGreaterThanOrEqualTo(decision.Assessment.Options.AsOf, seed);
        if (decision.Options.Count == 0)
        {
            (decision.UnderWay is not null || decision.Missing.Length > 0 || decision.IsMetAlready).ShouldBeTrue(seed);
            return;
        }

        decision.Options.Count(one => one.Verdict == OptionVerdict.Waits).ShouldBe(1, seed);
        decision.Options.Select(one => one.Id).ShouldBeUnique(seed);
        decision
            .Options.Where(one => one.Verdict == OptionVerdict.Meets)
            .ShouldBeInOrder(
                SortDirection.Ascending,
                Comparer<TreatmentOption>.Create((one, other) => one.Effort!.Value.CompareTo(other.Effort!.Value)),
                seed
            );
        decision.Figures.ShouldNotBeEmpty(seed);
        foreach (var option in decision.Options)
        {
            Check(option, decision, $"{seed}, {option.Id}");
        }

        if (decision.Options.Any(one => one.Verdict == OptionVerdict.Meets))
        {
            decision.Choice!.Verdict.ShouldBe(OptionVerdict.Meets, seed);
            decision.Sizing.ShouldBeEmpty(seed);
        }
        else
        {
            decision.Sizing.ShouldNotBeEmpty(seed);
        }
    }

    private static void Check(TreatmentOption option, TreatmentDecision decision, string seed)
    {
        option.Probability.DecimalFractions.ShouldBeInRange(0, 1, seed);
        option.ProbabilityInTime.DecimalFractions.ShouldBeInRange(0, option.Probability.DecimalFractions, seed);
        if (!option.IsPossible)
        {
            option.RuledOut.ShouldNotBeEmpty(seed);
            return;
        }

        if (option.Verdict == OptionVerdict.Waits)
        {
            return;
        }

        option.Begins!.Value.ShouldBeGreaterThanOrEqualTo(decision.Assessment.Options.AsOf, seed);
        (option.DoneP10 <= option.DoneP50 || option.DoneP50 is null).ShouldBeTrue(seed);
        (option.DoneP50 <= option.DoneP90 || option.DoneP90 is null).ShouldBeTrue(seed);
        var confidence = decision.DecisionOptions.Confidence;
        (option.Probability >= confidence).ShouldBe(option.Verdict != OptionVerdict.NotSure, seed);
        (option.ProbabilityInTime >= confidence).ShouldBe(option.Verdict == OptionVerdict.Meets, seed);
        if (option.Verdict == OptionVerdict.Meets)
        {
            option.DoneP90!.Value.ShouldBeLessThanOrEqualTo(decision.RiskDate.AddHours(1), seed);
        }

        (option.Cost?.P10 <= option.Cost?.P50 || option.Cost?.P50 is null).ShouldBeTrue(seed);
        if (decision.ByCost)
        {
            option.Effort.ShouldBe(option.Cost!.P50, seed);
        }
    }

    internal static InventedYard Drawn(int seed)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        bool Toss() => random.Next(2) == 0;
        var (level, rise) = (Between(40, 700), Toss() ? Between(0, 40) : 0);
        var (dirt, dirtRise) = (Between(300, 20_000), Toss() ? Between(1, 1.2) : 1);
        var acid = Between(0.1, 0.5);
        List<(double, Measurand, double)> readings = [];
        for (var month = 0; month < 8; month++)
        {
            var ago = 30.0 * (7 - month);
            var scatter = 1 + 0.05 * (random.NextDouble() - 0.5);
            readings.Add((ago, Measurands.WaterContent, Math.Max(1, (level - rise * (7 - month)) * scatter)));
            var at4 = dirt / Math.Pow(dirtRise, 7 - month) * scatter;
            readings.Add((ago, Measurands.Particles4, at4));
            readings.Add((ago, Measurands.Particles6, at4 * 0.25));
            readings.Add((ago, Measurands.Particles14, at4 * 0.02));
            readings.Add((ago, Measurands.AcidNumber, acid * scatter));
        }

        string[] all =
        [
            InventedYard.Loop,
            InventedYard.Vacuum,
            InventedYard.Drums,
            """{ "id": "SETTLE", "name": "settling", "kind": "settling-and-draining", "heightMetres": 1, "dropletMicrometres": 60 }""",
            """{ "id": "HIRED", "name": "hired unit", "leadDays": 12, "hire": { "dayRate": 300, "mobilisation": 700 }, "kind": "vacuum-dehydration", "flowLitresPerMinute": 60, "highestViscosityCentistokes": 300, "heaterKilowatts": 30, "motorKilowatts": 6, "processCelsius": 65, "chamberMillibar": 20, "removalPerPass": 0.7, "filter": { "beta4": 100, "beta6": 200, "beta14": 1000 } }""",
        ];
        return new InventedYard
        {
            Limits = string.Join(
                ",",
                InventedYard.Absolute("water-content", 200, 500),
                InventedYard.Absolute("particles-4um", 2500, 20_000),
                InventedYard.Absolute("particles-6um", 640, 5000),
                InventedYard.Absolute("acid-number", 0.3, 0.6)
            ),
            Equipment = string.Join(",", all.Where(_ => random.Next(3) > 0)),
            Prices = Toss()
                ? "\"perHour\": 20, \"perKilowattHour\": 0.3, \"perElement\": 150, \"perLitreOfNewOil\": 4, \"perLitreOfWaste\": 0.5"
                : "",
            Site = string.Join(
                ", ",
                new[]
                {
                    Toss() ? $"\"powerKilowatts\": {random.Next(2, 40)}" : "",
                    Toss()
                        ? $"\"outages\": [ {{ \"name\": \"planned\", \"from\": \"2026-03-{random.Next(2, 20):00}T06:00:00Z\", \"to\": \"2026-03-{random.Next(20, 30):00}T12:00:00Z\" }} ]"
                        : "",
                }.Where(one => one.Length > 0)
            ),
            Readings = readings,
        };
    }
}
