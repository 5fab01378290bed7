using System.Text.Json;
using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Advice;

/// <summary>What a program needs of a finding stands in the JSON as codes and numbers: it never has to read a sentence.</summary>
public class AssessmentFactTests
{
    private static readonly Source AnySource = Source.UserData("invented");

    private static JsonElement Root(OilHistory history, AssessmentOptions options, params Limit[] limits) =>
        JsonDocument.Parse(ConditionAssessor.Assess(history, new LimitSet("n", limits), options).ToJson()).RootElement;

    private static JsonElement Finding(JsonElement root, string code) =>
        root.GetProperty("problems")
            .EnumerateArray()
            .SelectMany(problem => problem.GetProperty("findings").EnumerateArray())
            .First(finding => finding.GetProperty("code").GetString() == code);

    private static Limit Upper(Measurand measurand, double alert, double alarm) =>
        new(measurand, LimitKind.Absolute, new LimitBand(alert, alarm), null, AnySource);

    [Fact]
    public void A_passed_limit_says_reading_side_figure_zone_and_source()
    {
        // Taken at 08:00 in a zone of +05:30, with a bound as its reading: more than 600 is beyond the alarm figure of 500.
        var at = new DateTimeOffset(2025, 3, 1, 8, 0, 0, TimeSpan.FromHours(5.5));
        var sample = new OilSample(
            "L-1042",
            at,
            new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(600, Qualifier.GreaterThan) }
        );
        var root = Root(
            Invented.History([sample]),
            new AssessmentOptions(at.AddDays(1)),
            Upper(Measurands.WaterContent, 200, 500)
        );

        var finding = Finding(root, "limit-passed");
        finding.GetProperty("measurand").GetString().ShouldBe("water-content");
        finding.GetProperty("side").GetString().ShouldBe("upper");
        var reading = finding.GetProperty("reading");
        reading.GetProperty("value").GetDouble().ShouldBe(600);
        reading.GetProperty("unit").GetString().ShouldBe("mg/kg");
        reading.GetProperty("qualifier").GetString().ShouldBe("greater-than");
        reading.GetProperty("at").GetString().ShouldBe("2025-03-01T08:00:00+05:30");
        reading.GetProperty("origin").GetString().ShouldBe("sample");
        reading.GetProperty("sampleNumber").GetString().ShouldBe("L-1042");
        var limit = finding.GetProperty("limit");
        limit.GetProperty("kind").GetString().ShouldBe("absolute");
        limit.GetProperty("zone").GetString().ShouldBe("alarm");
        limit.GetProperty("value").GetDouble().ShouldBe(500);
        limit.GetProperty("source").GetProperty("kind").GetString().ShouldBe("user-data");
        var evidence = finding.GetProperty("evidence").EnumerateArray().ToList();
        evidence
            .Select(one => one.GetProperty("id").GetString())
            .ShouldBe(["reading", "read-at", "from", "limit", "beyond-since", "limit-source"]);
        evidence[0].GetProperty("value").GetDouble().ShouldBe(600);
        evidence[0].GetProperty("qualifier").GetString().ShouldBe("greater-than");
        evidence[0].GetProperty("unit").GetString().ShouldBe("mg/kg");
        evidence[1].GetProperty("at").GetString().ShouldBe("2025-03-01T08:00:00+05:30");
    }

    [Fact]
    public void A_lower_limit_says_its_side_and_a_sensor_that_it_is_one()
    {
        var row = new SensorReading(
            Invented.Start,
            new Dictionary<Measurand, Reading> { [Measurands.OilTemperature] = new(12) }
        );
        var limit = new Limit(Measurands.OilTemperature, LimitKind.Absolute, null, new LimitBand(20, null), AnySource);
        var root = Root(
            OilHistory.Create(Invented.Machine, [], [row], []),
            new AssessmentOptions(Invented.Start.AddDays(1)),
            limit
        );

        var finding = Finding(root, "limit-passed");
        finding.GetProperty("side").GetString().ShouldBe("lower");
        finding.GetProperty("limit").GetProperty("zone").GetString().ShouldBe("alert");
        finding.GetProperty("reading").GetProperty("origin").GetString().ShouldBe("sensor");
        finding.GetProperty("reading").TryGetProperty("sampleNumber", out _).ShouldBeFalse();
    }

    [Fact]
    public void A_rate_says_its_unit_its_span_and_what_it_passed()
    {
        // 6 mg/kg in 10 days are 18 in 30.
        var samples = new[] { 10.0, 16 }.Select((iron, i) => Invented.Sample(i, 10 * i, (Measurands.Iron, new(iron))));
        var limit = new Limit(
            Measurands.Iron,
            LimitKind.RateOfChange,
            new LimitBand(15, null),
            null,
            AnySource,
            per: TimeSpan.FromDays(30)
        );
        var finding = Finding(
            Root(Invented.History(samples), new AssessmentOptions(Invented.Start.AddDays(20)), limit),
            "rate-of-change"
        );

        var rate = finding.GetProperty("rate");
        rate.GetProperty("value").GetDouble().ShouldBe(18, 1e-9);
        rate.GetProperty("unit").GetString().ShouldBe("mg/kg");
        rate.GetProperty("perDays").GetDouble().ShouldBe(30);
        rate.GetProperty("scale").GetString().ShouldBe("linear");
        finding.GetProperty("limit").GetProperty("value").GetDouble().ShouldBe(15);
        finding.GetProperty("limit").GetProperty("perDays").GetDouble().ShouldBe(30);
        finding.GetProperty("reading").GetProperty("value").GetDouble().ShouldBe(16);
    }

    [Fact]
    public void A_slope_of_a_logarithmic_measurand_has_no_unit_and_says_its_scale()
    {
        // Particle counts that double every 30 days: ln 2 / 30 a day.
        var samples = Enumerable
            .Range(0, 10)
            .Select(i =>
                Invented.Sample(i, 30 * i, (Measurands.Particles4, new(100 * Math.Pow(2, i) * (1 + 0.02 * (i % 2)))))
            );
        var root = Root(
            Invented.History(samples),
            new AssessmentOptions(Invented.Start.AddDays(280)),
            Upper(Measurands.Particles4, 1e6, 2e6)
        );

        var slope = root.GetProperty("states")[0].GetProperty("trend").GetProperty("slope");
        slope.GetProperty("scale").GetString().ShouldBe("logarithmic");
        slope.GetProperty("unit").GetString().ShouldBeEmpty();
        slope.GetProperty("value").GetDouble().ShouldBe(Math.Log(2) / 30, 0.0005);
    }

    [Fact]
    public void What_is_wrong_with_records_is_said_with_the_readings_that_were_set_aside()
    {
        var finding = Finding(
            Root(
                Invented.History([Invented.Sample(1, 0, (Measurands.Iron, new(1e12)), (Measurands.Zinc, new(5)))]),
                new AssessmentOptions(Invented.Start.AddDays(1)),
                Upper(Measurands.Iron, 20, 40)
            ),
            "record-fault"
        );

        var record = finding.GetProperty("record");
        record.GetProperty("kind").GetString().ShouldBe("implausible-reading");
        record.GetProperty("sampleNumber").GetString().ShouldBe("S1");
        record.GetProperty("readings")[0].GetProperty("measurand").GetString().ShouldBe("iron");
        record.GetProperty("readings")[0].GetProperty("value").GetDouble().ShouldBe(1e12);
    }

    [Fact]
    public void The_options_are_said_that_changed_the_outcome()
    {
        var options = Root(
                Invented.History([Invented.Sample(1, 0, (Measurands.Iron, new(1)))]),
                new AssessmentOptions(Invented.Start.AddDays(1), TimeSpan.FromDays(90), 0.8, 0.01, overOilHours: true),
                Upper(Measurands.Iron, 20, 40)
            )
            .GetProperty("options");

        options.GetProperty("planningHorizonDays").GetDouble().ShouldBe(90);
        options.GetProperty("confidence").GetDouble().ShouldBe(0.8);
        options.GetProperty("trendSignificance").GetDouble().ShouldBe(0.01);
        options.GetProperty("overOilHours").GetBoolean().ShouldBeTrue();
        options.GetProperty("samplingRisk").GetDouble().ShouldBe(0.05);
        options.GetProperty("shortestSamplingDays").GetDouble().ShouldBe(14);
        options.GetProperty("longestSamplingDays").GetDouble().ShouldBe(180);
    }

    [Fact]
    public void Nothing_is_null()
    {
        for (var seed = 0; seed < 40; seed++)
        {
            var one = new InventedHistories(seed);
            var options = new AssessmentOptions(one.End.AddDays(1));
            ConditionAssessor
                .Assess(one.History(), InventedHistories.Limits, options)
                .ToJson()
                .ShouldNotContain("null");
        }
    }
}
