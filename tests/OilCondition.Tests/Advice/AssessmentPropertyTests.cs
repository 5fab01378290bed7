using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using OilCondition.Prognosis;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>What must not matter to an assessment: the order of the records, their repetition, and which day the first of them was.</summary>
public class AssessmentPropertyTests
{
    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue - 1];

    private static ConditionAssessment Assess(OilHistory history, DateTimeOffset asOf) =>
        ConditionAssessor.Assess(history.Until(asOf), InventedHistories.Limits, new AssessmentOptions(asOf));

    /// <summary>Everything that a maintenance system or a planner would see of it.</summary>
    private static string Told(ConditionAssessment assessment) =>
        string.Join(
            "\n",
            assessment
                .Alerts.Select(alert =>
                    $"{alert.Key} {alert.Severity}: {string.Join(" ", alert.Findings.Select(Sentences.English.Of))}"
                )
                .Concat(
                    assessment.States.Select(state =>
                        $"{state.Measurand.Id} {state.Worst.State} {state.Worst.Since:O} {state.Worst.Pending} {state.TopUps} "
                        + $"{state.Trend.Assessment.Verdict} {state.Trend.Assessment.Slope:R} {string.Join(" ", state.Lives.Select(Dates))}"
                    )
                )
                .Append($"{assessment.NextSample?.At:O} {assessment.NextSample?.Reason} {assessment.Cleanliness}")
        );

    private static string Dates(RemainingLife life) =>
        life is RemainingLife.Crosses crosses
            ? $"{crosses.P10:O} {crosses.P50:O} {crosses.P90:O}"
            : life.GetType().Name;

    /// <summary>Whoever is told of water that a standstill frees, of an alarm or of a sudden change is not told to look again in half a year.</summary>
    [Fact]
    public void What_stands_beyond_what_is_allowed_is_sampled_again_after_the_shortest_interval()
    {
        var (free, others) = (0, 0);
        Seeds.Holds(
            seed =>
            {
                var drawn = new InventedHistories(seed);
                var history = OilHistory.Create(Invented.Machine, drawn.Samples, drawn.Sensors, drawn.Events);
                var options = new AssessmentOptions(drawn.End.AddDays(Math.Abs(seed % 30)));
                var assessment = ConditionAssessor.Assess(history, InventedHistories.Limits, options);
                if (assessment.NextSample is not { Reason: not NextSampleReason.NeverSampled } next)
                {
                    return;
                }

                var standsBeyond = assessment.Findings.Any(one =>
                    one is FreeWaterFinding or SuddenChangeFinding || one.Severity == Severity.Alarm
                );
                free += assessment.Findings.Any(one => one is FreeWaterFinding) ? 1 : 0;
                others += standsBeyond ? 0 : 1;
                if (standsBeyond)
                {
                    next.At.ShouldBe(history.Samples[^1].TakenAt + options.Sampling.Shortest, $"seed {seed}");
                }
            },
            iter: 100
        );
        free.ShouldBeGreaterThan(5);
        others.ShouldBeGreaterThan(5);
    }

    [Fact]
    public void Order_and_repetition_of_the_records_change_nothing_that_is_told() =>
        Seeds.Holds(
            seed =>
            {
                var one = new InventedHistories(seed);
                var random = new Random(seed + 1);
                var samples = one.Samples.Concat(one.Samples.Where(_ => random.Next(0, 3) == 0));
                var sensors = one.Sensors.Concat(one.Sensors.Where(_ => random.Next(0, 3) == 0));
                var events = one.Events.Concat(one.Events.Where(change => change is OilChange));
                var shuffled = OilHistory.Create(
                    Invented.Machine,
                    samples.OrderBy(_ => random.Next()),
                    sensors.OrderBy(_ => random.Next()),
                    events.OrderBy(_ => random.Next())
                );
                var (journal, other) = (AlertJournal.Empty, AlertJournal.Empty);
                foreach (var asOf in new[] { one.End, one.End.AddDays(40) })
                {
                    var (expected, actual) = (Assess(one.History(), asOf), Assess(shuffled, asOf));
                    Told(actual).ShouldBe(Told(expected));
                    journal = journal.Reconcile(expected);
                    other = other.Reconcile(actual);
                    other.ToJson().ShouldBe(journal.ToJson());
                }
            },
            iter: 150
        );

    [Fact]
    public void A_shift_of_all_times_shifts_every_date_by_it_and_changes_nothing_else() =>
        Gen.Select(Seeds, Gen.Int[-20_000, 20_000])
            .Holds(
                (seed, days) =>
                {
                    var one = new InventedHistories(seed);
                    var by = TimeSpan.FromDays(days);
                    var shifted = OilHistory.Create(
                        Invented.Machine,
                        one.Samples.Select(it => new OilSample(it.SampleNumber, it.TakenAt + by, it.Readings)),
                        one.Sensors.Select(it => new SensorReading(it.At + by, it.Readings)),
                        one.Events.Select(it => Shifted(it, by))
                    );
                    var asOf = one.End.AddDays(Math.Abs(seed % 30));

                    var json = Assess(shifted, asOf + by).ToJson();
                    Regex
                        .Replace(json, @"\d{4}-\d\d-\d\d", date => Back(date.Value, days), RegexOptions.NonBacktracking)
                        .ShouldBe(Assess(one.History(), asOf).ToJson());
                },
                iter: 100
            );

    [Fact]
    public void Other_units_at_the_doors_change_nothing() =>
        Seeds.Holds(
            seed =>
            {
                // % by mass for mg/kg, Saybolt seconds for mm²/s, °F for °C, hours for minutes of the same records and limits.
                var one = new InventedHistories(seed);
                var machine = Invented.Machine;
                var inOtherUnits = OilHistory.Create(
                    new Machine(
                        machine.Id,
                        machine.Name,
                        machine.Oil,
                        Volume.FromUsGallons(machine.ChargeVolume.UsGallons),
                        Temperature.FromDegreesFahrenheit(machine.RunningTemperature.DegreesFahrenheit),
                        Temperature.FromDegreesFahrenheit(machine.StandstillTemperature.DegreesFahrenheit)
                    ),
                    one.Samples.Select(it => new OilSample(
                        it.SampleNumber,
                        it.TakenAt,
                        ThroughOtherUnits(it.Readings)
                    )),
                    one.Sensors.Select(it => new SensorReading(it.At, ThroughOtherUnits(it.Readings))),
                    one.Events
                );
                var limits = LimitSet.Parse(LimitsText("mg/kg", 200, 500, 20, "mm²/s", 50, 55));
                var other = LimitSet.Parse(LimitsText("%", 0.02, 0.05, 0.002, "SUS", Seconds(50), Seconds(55)));
                var options = new AssessmentOptions(one.End.AddDays(Math.Abs(seed % 30)));

                var expected = ConditionAssessor.Assess(one.History(), limits, options);
                var actual = ConditionAssessor.Assess(inOtherUnits, other, options);

                actual.Alerts.Select(alert => alert.Key).ShouldBe(expected.Alerts.Select(alert => alert.Key));
                actual
                    .Findings.Select(finding => finding.Code)
                    .ShouldBe(expected.Findings.Select(finding => finding.Code));
                Near(actual.NextSample?.At, expected.NextSample?.At);
                foreach (var (now, then) in actual.States.Zip(expected.States))
                {
                    now.Worst.State.ShouldBe(then.Worst.State);
                    now.Worst.Since.ShouldBe(then.Worst.Since);
                    now.Trend.Assessment.Verdict.ShouldBe(then.Trend.Assessment.Verdict);
                    now.Trend.Judged.Points.Count.ShouldBe(then.Trend.Judged.Points.Count);
                    foreach (var (life, same) in now.Lives.Zip(then.Lives))
                    {
                        life.GetType().ShouldBe(same.GetType());
                        Near((life as RemainingLife.Crosses)?.P10, (same as RemainingLife.Crosses)?.P10);
                        Near((life as RemainingLife.Crosses)?.P90, (same as RemainingLife.Crosses)?.P90);
                    }
                }
            },
            iter: 100
        );

    /// <summary>Dates that a search finds to the minute.</summary>
    private static void Near(DateTimeOffset? one, DateTimeOffset? other)
    {
        one.HasValue.ShouldBe(other.HasValue);
        (one - other)?.TotalMinutes.ShouldBe(0, 2.5);
    }

    private static string LimitsText(
        string contents,
        double alert,
        double alarm,
        double deadBand,
        string viscosity,
        double thick,
        double thicker
    ) =>
        FormattableString.Invariant(
            $$"""
            { "name": "invented", "limits": [
              { "measurand": "water-content", "kind": "absolute", "unit": "{{contents}}", "upper": { "alert": {{alert}}, "alarm": {{alarm}} },
                "deadBand": {{deadBand}}, "source": { "kind": "common-practice", "text": "invented" } },
              { "measurand": "iron", "kind": "absolute", "unit": "{{contents}}", "upper": { "alert": {{alert
                / 10}}, "alarm": {{alarm / 10}} },
                "source": { "kind": "common-practice", "text": "invented" } },
              { "measurand": "viscosity-40c", "kind": "absolute", "unit": "{{viscosity}}", "upper": { "alert": {{thick}}, "alarm": {{thicker}} },
                "source": { "kind": "common-practice", "text": "invented" } },
              { "measurand": "relative-saturation", "kind": "absolute", "upper": { "alert": 60, "alarm": 80 },
                "source": { "kind": "common-practice", "text": "invented" } } ] }
            """
        );

    private static double Seconds(double squareMillimetres) =>
        SayboltViscosity.ToSayboltSeconds(
            KinematicViscosity.FromCentistokes(squareMillimetres),
            Temperature.FromDegreesCelsius(40)
        );

    private static Dictionary<Measurand, Reading> ThroughOtherUnits(IReadOnlyDictionary<Measurand, Reading> readings) =>
        readings.ToDictionary(
            pair => pair.Key,
            pair =>
            {
                var (written, unit) = pair.Key.Unit switch
                {
                    "mg/kg" => (pair.Value.Value / 1e4, "wt%"),
                    "mm²/s" => (Seconds(pair.Value.Value), "SUS"),
                    "°C" => (pair.Value.Value * 1.8 + 32, "°F"),
                    "%" => (pair.Value.Value / 100, "aw"),
                    "per mL" => (pair.Value.Value * 100, "per 100 mL"),
                    _ => (pair.Value.Value, ""),
                };
                pair.Key.TryConvert(written, unit, out var value).ShouldBeTrue();
                return new Reading(value, pair.Value.Qualifier, pair.Value.Method);
            }
        );

    private static string Back(string date, int days) =>
        DateTime
            .ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture)
            .AddDays(-days)
            .ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static OilEvent Shifted(OilEvent one, TimeSpan by) =>
        one switch
        {
            TopUp topUp => new TopUp(topUp.At + by, topUp.Volume),
            TreatmentRun run => new TreatmentRun(run.At + by, run.EndedAt + by, run.Kind, run.Measurand, run.Target),
            _ => new OilChange(one.At + by),
        };
}
