using OilCondition.Limits;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>Odd fleets, odd ranges, work that is stopped.</summary>
public class BacktestHostileTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private static readonly LimitSet IronLimits = new(
        "invented",
        [new Limit(Measurands.Iron, LimitKind.Absolute, new LimitBand(20, 40), null, AnySource)]
    );

    private static DateTimeOffset Day(double day) => Invented.Start.AddDays(day);

    private static OilHistory History(string id, params (double Day, double Iron)[] readings) =>
        OilHistory.Create(
            new Machine(
                id,
                "invented machine",
                Invented.Oil,
                Volume.FromLiters(1000),
                Temperature.FromDegreesCelsius(60),
                Temperature.FromDegreesCelsius(20)
            ),
            readings.Select((one, i) => Invented.Sample(i, one.Day, (Measurands.Iron, new Reading(one.Iron)))),
            [],
            []
        );

    private static readonly OilHistory Usual = History("M1", (0, 5), (25, 25), (55, 30), (85, 50));

    private static BacktestOptions Days(double from = 0, double to = 600) => new(Day(from), Day(to));

    private static void HasNothing(Backtest backtest)
    {
        backtest.DayCount.ShouldBe(0);
        backtest.MachineYears.ShouldBe(0);
        backtest.Total.Raised.ShouldBe(0);
        backtest.Total.RaisedPerMachineYear.ShouldBeNull();
        backtest.Total.Confirmed.Share.ShouldBeNull();
        backtest.Total.MedianWarning.ShouldBeNull();
        backtest.ToString().ShouldContain("0 days, 0 machine-years");
    }

    [Fact]
    public void No_machine_at_all()
    {
        var backtest = Backtest.Of([], IronLimits, Days());

        HasNothing(backtest);
        backtest.MachineCount.ShouldBe(0);
        backtest.Subjects.ShouldBeEmpty();
    }

    [Fact]
    public void Machines_without_a_record_in_the_range_are_named()
    {
        var backtest = Backtest.Of(
            [History("none"), History("later", (700, 5)), History("earlier", (-60, 5))],
            IronLimits,
            Days()
        );

        HasNothing(backtest);
        backtest.NotReplayed.ShouldBe(["earlier", "later", "none"]);
        backtest.ToString().ShouldContain("Without a record in the range: earlier, later, none");
    }

    [Fact]
    public void A_range_after_the_last_record() => HasNothing(Backtest.Of([Usual], IronLimits, Days(40_000, 41_000)));

    [Fact]
    public void A_single_sample_is_seen_on_one_day()
    {
        var backtest = Backtest.Of([History("M1", (10, 50))], IronLimits, Days());

        backtest.DayCount.ShouldBe(1);
        backtest.Alerts.ShouldHaveSingleItem().RaisedAt.ShouldBe(Day(30));
        backtest.Alerts[0].Outcome.ShouldBe(Backtest.AlertOutcome.Undecided);
        backtest.Crossings.ShouldBeEmpty();
    }

    [Fact]
    public void A_range_of_one_moment() => Backtest.Of([Usual], IronLimits, Days(60, 60)).DayCount.ShouldBe(1);

    [Fact]
    public void No_limit_at_all()
    {
        var backtest = Backtest.Of([Usual], new LimitSet("empty", []), Days());

        backtest.DayCount.ShouldBe(4);
        backtest.Total.Raised.ShouldBe(0);
        backtest.Crossings.ShouldBeEmpty();
    }

    [Fact]
    public void A_limit_without_a_fixed_figure_raises_alerts_that_nothing_can_confirm()
    {
        var limits = new LimitSet(
            "rates only",
            [
                new Limit(
                    Measurands.Iron,
                    LimitKind.RateOfChange,
                    new LimitBand(10, null),
                    null,
                    AnySource,
                    per: TimeSpan.FromDays(30)
                ),
            ]
        );

        var backtest = Backtest.Of([Usual], limits, Days());

        backtest.Alerts.ShouldNotBeEmpty();
        backtest.Alerts.ShouldAllBe(one => one.Outcome == Backtest.AlertOutcome.Undecided);
        backtest.Crossings.ShouldBeEmpty();
    }

    [Fact]
    public void A_machine_that_is_there_twice_is_refused() =>
        Should
            .Throw<ArgumentException>(() => Backtest.Of([Usual, History("M1", (0, 5))], IronLimits, Days()))
            .Message.ShouldContain("'M1' is there twice");

    [Fact]
    public void Options_outside_their_range_are_refused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => Days(10, 9)).Message.ShouldContain("to is");
        Should.Throw<ArgumentOutOfRangeException>(() => new BacktestOptions(default, Day(0)));
        Should
            .Throw<ArgumentOutOfRangeException>(() => new BacktestOptions(Day(0), Day(9), TimeSpan.Zero))
            .Message.ShouldContain("1 to 366 days");
        Should.Throw<ArgumentOutOfRangeException>(() =>
            new BacktestOptions(Day(0), Day(9), grace: TimeSpan.FromDays(-1))
        );
        Should.Throw<ArgumentOutOfRangeException>(() => new BacktestOptions(Day(0), Day(9), confidence: double.NaN));
    }

    [Fact]
    public void Options_of_another_day_than_the_one_asked_for_are_refused()
    {
        var now = new BacktestOptions(Day(0), Day(600), assess: _ => new AssessmentOptions(Day(600)));

        Should.Throw<ArgumentException>(() => Backtest.Of([Usual], IronLimits, now)).Message.ShouldContain("assess");
    }

    /// <summary>With no horizon and no grace nothing can be in time: 85 comes 25 days after the last replayed day before it.</summary>
    [Fact]
    public void The_options_of_the_assessment_count()
    {
        var hasty = new BacktestOptions(
            Day(0),
            Day(600),
            grace: TimeSpan.FromDays(1),
            assess: asOf => new AssessmentOptions(asOf, planningHorizon: TimeSpan.FromDays(20))
        );

        // Raised on day 30, to be confirmed by day 51; the next reading is of day 55.
        Backtest.Of([Usual], IronLimits, hasty).Alerts[0].Outcome.ShouldBe(Backtest.AlertOutcome.NotConfirmed);
    }

    [Fact]
    public void Progress_rises_day_by_day_to_the_whole()
    {
        var told = new Told();

        var backtest = Backtest.Of([Usual, History("M2", (0, 5), (25, 5))], IronLimits, Days(), told);

        told.Shares.ShouldBe(Enumerable.Range(1, backtest.DayCount).Select(i => (double)i / backtest.DayCount));
    }

    [Fact]
    public void Work_that_is_stopped_stops_before_the_next_day()
    {
        using var stop = new CancellationTokenSource();
        var told = new Told(after: 2, stop.Cancel);

        Should.Throw<OperationCanceledException>(() => Backtest.Of([Usual], IronLimits, Days(), told, stop.Token));
        told.Shares.Count.ShouldBe(2);
        Should.Throw<OperationCanceledException>(() =>
            Backtest.Of([Usual], IronLimits, Days(), null, new CancellationToken(canceled: true))
        );
    }

    private sealed class Told(int after = int.MaxValue, Action? then = null) : IProgress<Ratio>
    {
        public List<double> Shares { get; } = [];

        public void Report(Ratio value)
        {
            Shares.Add(value.DecimalFractions);
            if (Shares.Count == after)
            {
                then?.Invoke();
            }
        }
    }
}
