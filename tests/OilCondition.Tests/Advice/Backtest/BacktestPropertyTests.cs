using CsCheck;
using OilCondition.Limits;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>Drawn fleets: what adds up, what must not matter, and that no day looks ahead.</summary>
public class BacktestPropertyTests
{
    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue - 10];

    private static DateTimeOffset Day(double day) => Invented.Start.AddDays(day);

    private static OilHistory History(string id, InventedHistories records) =>
        OilHistory.Create(
            new Machine(
                id,
                "invented machine",
                Invented.Oil,
                Volume.FromLiters(1000),
                Temperature.FromDegreesCelsius(60),
                Temperature.FromDegreesCelsius(20)
            ),
            records.Samples,
            records.Sensors,
            records.Events
        );

    private static List<OilHistory> Fleet(int seed) =>
        [.. Enumerable.Range(0, 3).Select(i => History($"M{i}", new InventedHistories(seed + i)))];

    private static BacktestOptions Options(double from = 0, double to = 700, double step = 30) =>
        new(Day(from), Day(to), TimeSpan.FromDays(step));

    /// <summary>Everything that a backtest tells.</summary>
    private static string Told(Backtest backtest) =>
        string.Join("\n", [backtest.ToString(), .. backtest.Alerts, .. backtest.Crossings]);

    [Fact]
    public void Figures_add_up_and_lie_where_they_can() =>
        Seeds.Holds(
            seed =>
            {
                var backtest = Backtest.Of(Fleet(seed), InventedHistories.Limits, Options());
                foreach (var one in backtest.Subjects.Append(backtest.Total))
                {
                    (one.Confirmed.Part + one.NotConfirmed + one.ActedOn + one.Undecided + one.NotJudged).ShouldBe(
                        one.Raised
                    );
                    (one.Held.Part + one.CrossedBefore.Part + one.CrossedAfter.Part).ShouldBe(one.Held.Count, 1e-6);
                    one.ForetoldWithinHorizon.ShouldBeInRange(0, one.CameWithinHorizon.Count);
                    foreach (
                        var share in new[]
                        {
                            one.Confirmed,
                            one.Silent,
                            one.Held,
                            one.CrossedBefore,
                            one.CrossedAfter,
                            one.RunningPastInterval,
                            one.CameWithinHorizon,
                        }
                    )
                    {
                        (share.Share is null).ShouldBe(share.Count == 0);
                        (share.Interval.Lower ?? 0).ShouldBeInRange(0, share.Share ?? 0);
                        (share.Interval.Upper ?? 1).ShouldBeInRange(share.Share ?? 0, 1);
                    }
                }

                backtest.Subjects.Sum(one => one.Raised).ShouldBe(backtest.Total.Raised);
                backtest.Subjects.Sum(one => one.Silent.Count).ShouldBe(backtest.Crossings.Count);
                backtest.Subjects.Sum(one => one.Held.Count).ShouldBe(backtest.Total.Held.Count);
                backtest.Crossings.ShouldAllBe(one =>
                    one.Warning >= TimeSpan.Zero && (one.IsSilent || one.WarnedAt < one.Point.At)
                );
                backtest.Alerts.ShouldAllBe(one => one.DecidedAt == null || one.DecidedAt >= one.RaisedAt);
            },
            iter: 10
        );

    /// <summary>A second route: the assessments of two neighbouring days, compared here.</summary>
    [Fact]
    public void An_alert_is_raised_where_a_key_is_new() =>
        Seeds.Holds(
            seed =>
            {
                var fleet = Fleet(seed);
                var raised = new List<string>();
                foreach (var history in fleet)
                {
                    history.TryFirstRecord(out var first);
                    var last = history
                        .Samples.Select(sample => sample.TakenAt)
                        .Concat(history.SensorReadings.Select(row => row.At))
                        .Max();
                    IEnumerable<string> Keys(DateTimeOffset day) =>
                        first > day
                            ? []
                            : ConditionAssessor
                                .Assess(history.Until(day), InventedHistories.Limits, new AssessmentOptions(day))
                                .Alerts.Select(alert => alert.Key);
                    for (var day = Day(60); day < Day(700) && day.AddDays(-30) < last; day = day.AddDays(30))
                    {
                        raised.AddRange(Keys(day).Except(Keys(day.AddDays(-30))).Select(key => $"{day:u} {key}"));
                    }
                }

                Backtest
                    .Of(fleet, InventedHistories.Limits, Options(from: 60, to: 699))
                    .Alerts.Select(one => $"{one.RaisedAt:u} {one.Alert.Key}")
                    .Order()
                    .ShouldBe(raised.Order());
            },
            iter: 5
        );

    [Fact]
    public void The_order_of_machines_does_not_matter() =>
        Seeds.Holds(
            seed =>
            {
                var fleet = Fleet(seed);

                Told(Backtest.Of(Enumerable.Reverse(fleet), InventedHistories.Limits, Options()))
                    .ShouldBe(Told(Backtest.Of(fleet, InventedHistories.Limits, Options())));
            },
            iter: 3
        );

    /// <summary>The records up to a day, followed by those of another machine: as if the future had gone another way.</summary>
    private static OilHistory WithOtherFuture(string id, InventedHistories past, InventedHistories future, double day)
    {
        var later = future.Samples.Where(one => one.TakenAt > Day(day));
        return OilHistory.Create(
            History(id, past).Machine,
            past.Samples.Where(one => one.TakenAt <= Day(day))
                .Concat(later.Select(one => new OilSample("F" + one.SampleNumber, one.TakenAt, one.Readings))),
            past.Sensors.Where(one => one.At <= Day(day)).Concat(future.Sensors.Where(one => one.At > Day(day))),
            past.Events.Where(one => one.At <= Day(day))
                .Select(one => Open(one, Day(day)))
                .Concat(future.Events.Where(one => one.At > Day(day)))
        );
    }

    /// <summary>A treatment of which nobody knows yet when it will end.</summary>
    private static OilEvent Open(OilEvent one, DateTimeOffset day) =>
        one is TreatmentRun run && run.EndedAt > day
            ? new TreatmentRun(run.At, null, run.Kind, run.Measurand, run.Target)
            : one;

    [Fact]
    public void Another_future_changes_nothing_that_was_said_before_it() =>
        Seeds.Holds(
            seed =>
            {
                const double Turn = 300;
                var past = new InventedHistories(seed);
                var one = History("M", past);
                var other = WithOtherFuture("M", past, new InventedHistories(seed + 1), Turn);
                if (!one.TryFirstRecord(out var first) || first > Day(Turn))
                {
                    return;
                }

                // All that is said up to the turn, with what came up to the turn.
                Told(Backtest.Of([other], InventedHistories.Limits, Options(to: Turn)))
                    .ShouldBe(Told(Backtest.Of([one], InventedHistories.Limits, Options(to: Turn))));

                // With what came later: the same alerts were raised up to the turn.
                IEnumerable<string> Raised(OilHistory history) =>
                    Backtest
                        .Of([history], InventedHistories.Limits, Options())
                        .Alerts.Where(alert => alert.RaisedAt <= Day(Turn))
                        .Select(alert => $"{alert.RaisedAt:u} {alert.Alert}");
                var last = new[] { one, other }.Min(history =>
                    history.Samples.Select(sample => sample.TakenAt).Append(first).Max()
                );
                Raised(other)
                    .Where(text => string.CompareOrdinal(text, $"{last:u}") < 0)
                    .ShouldBe(Raised(one).Where(text => string.CompareOrdinal(text, $"{last:u}") < 0));
            },
            iter: 20
        );

    /// <summary>An assessment of a day is the one that could be made on that day: from records that ended there.</summary>
    [Fact]
    public void An_assessment_sees_no_later_record() =>
        Seeds.Holds(
            seed =>
            {
                var past = new InventedHistories(seed);
                var whole = History("M", past);
                foreach (var day in new[] { 60.0, 150, 300, 420 })
                {
                    var cut = OilHistory.Create(
                        whole.Machine,
                        past.Samples.Where(one => one.TakenAt <= Day(day)),
                        past.Sensors.Where(one => one.At <= Day(day)),
                        past.Events.Where(one => one.At <= Day(day)).Select(one => Open(one, Day(day)))
                    );
                    if (!cut.TryFirstRecord(out _))
                    {
                        continue;
                    }

                    string Assess(OilHistory history)
                    {
                        var assessment = ConditionAssessor.Assess(
                            history.Until(Day(day)),
                            InventedHistories.Limits,
                            new AssessmentOptions(Day(day))
                        );
                        return assessment + "\n" + string.Join("\n", assessment.States);
                    }

                    Assess(whole).ShouldBe(Assess(cut));
                }
            },
            iter: 20
        );
}
