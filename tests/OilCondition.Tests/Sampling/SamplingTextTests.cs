using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Tests.Sampling;

/// <summary>How the types of this room print themselves, against texts written by hand.</summary>
public class SamplingTextTests
{
    private static readonly DateTimeOffset At = new(2025, 3, 4, 6, 0, 0, TimeSpan.Zero);

    private static OilHistory History { get; } =
        OilHistory.Create(
            Invented.Machine,
            Enumerable
                .Range(0, 13)
                .Select(i => Invented.Sample(i, 30 * i, (Measurands.Iron, new Reading(i == 12 ? -1 : 10 + 3 * i)))),
            [],
            [new OilChange(Invented.Start.AddDays(-1))]
        );

    private static MeasurandSeries Series { get; } =
        History.SampleSeries(Measurands.Iron, Invented.Start, Invented.Start.AddDays(400));

    public static TheoryData<object, string> Texts() =>
        new()
        {
            { new Reading(69.3667), "69.37" },
            { new Reading(10, Qualifier.LessThan), "<10" },
            { new Reading(12345.6), "12346" },
            { Invented.Oil, "invented oil (3 new-oil readings, saturation curve)" },
            { Invented.Machine, "M1 invented machine, invented oil, 1000 L, 60 °C running, 20 °C at standstill" },
            { new OilChange(At), "oil change on 2025-03-04" },
            { new TopUp(At, Volume.FromLiters(20)), "top-up of 20 L on 2025-03-04" },
            {
                new TreatmentRun(At, At.AddHours(60), TreatmentKind.VacuumDehydration, Measurands.WaterContent, 60),
                "vacuum dehydration from 2025-03-04 06:00 to 2025-03-06 18:00, target 60 mg/kg of water content"
            },
            {
                new TreatmentRun(At, null, TreatmentKind.FineFiltration, Measurands.Particles4, 1300),
                "fine filtration from 2025-03-04 06:00, under way, target 1300 per mL of particles ≥ 4 µm(c)"
            },
            { Invented.Sample(9, 0), "S9 of 2025-01-06" },
            {
                new SensorReading(
                    At,
                    new Dictionary<Measurand, Reading>
                    {
                        [Measurands.RelativeSaturation] = new(45.2),
                        [Measurands.OilTemperature] = new(60),
                    }
                ),
                "2025-03-04 06:00: oil temperature 60 °C, relative saturation 45.2 %"
            },
            { History, "M1: 13 samples, 0 sensor readings, 1 events, 1 issues" },
            { History.Issues[0], "implausible reading: S12 of 2026-01-01 (1 readings)" },
            { History.ChargeAt(At), "2025-01-05" },
            { Series, "iron: 12 readings from 2025-01-06 to 2025-12-02, 0 left out" },
            { Series.Points[1], "13 on 2025-02-05, sample S1" },
            { SeriesTrend.Of(Series), "iron: rising, 3 mg/kg per 30 days (12 readings)" },
            { Measurands.AcidNumber, "acid number [mgKOH/g]" },
            { MeasurandCatalog.BuiltIn, "45 measurands" },
        };

    [Theory]
    [MemberData(nameof(Texts))]
    public void Prints_what_an_analyst_wants_to_read(object value, string expected) =>
        value.ToString().ShouldBe(expected);

    [Fact]
    public void A_point_left_out_says_why() =>
        Series
            .Points[1]
            .LeftOutBecause(LeftOutReason.BeforeChange)
            .ToString()
            .ShouldBe("13 on 2025-02-05, sample S1, left out: before change");

    [Theory]
    [InlineData(69.3667, Qualifier.None, "69.37 mg/kg")] // as it was reported
    [InlineData(69.3667, Qualifier.Approximately, "≈69 mg/kg")] // known to 7 mg/kg
    [InlineData(212.4, Qualifier.Approximately, "≈210 mg/kg")] // known to a tenth
    [InlineData(10, Qualifier.LessThan, "<10 mg/kg")]
    public void A_figure_has_the_digits_that_its_test_method_bears(
        double value,
        Qualifier qualifier,
        string expected
    ) => Measurands.WaterContent.Text(new Reading(value, qualifier)).ShouldBe(expected);

    [Theory]
    [InlineData(69.4, 212.0, "70")] // what is free of a total of 212 is known to 21 mg/kg
    [InlineData(69.4, null, "69")]
    [InlineData(3.2, null, "3")]
    public void What_follows_from_a_reading_is_no_surer_than_the_reading(
        double value,
        double? total,
        string expected
    ) => Measurands.WaterContent.Text(value, total).ShouldBe(expected);

    [Fact]
    public void A_precision_needs_its_source() =>
        Should
            .Throw<ArgumentNullException>(() =>
                new Measurand("x", "x", "u", LimitSide.Upper, NaturalScale.Linear, 0, 1, relativePrecision: 0.1)
            )
            .Message.ShouldContain("needs its source");
}
