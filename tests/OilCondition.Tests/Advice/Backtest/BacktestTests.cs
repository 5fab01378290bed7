using OilCondition.Limits;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>
/// Hand-made histories with outcomes that can be counted. Iron has an alert figure of 20 and an alarm figure of 40 mg/kg; the days replayed are 0, 30, 60
/// and so on; an alert has 180 + 30 days to be confirmed.
/// </summary>
public class BacktestTests
{
    private static readonly LimitSet IronLimits = new(
        "invented",
        [new Limit(Measurands.Iron, LimitKind.Absolute, new LimitBand(20, 40), null, Source.CommonPractice("invented"))]
    );

    private static DateTimeOffset Day(double day) => Invented.Start.AddDays(day);

    private static BacktestOptions Days(double from, double to) => new(Day(from), Day(to));

    private static OilHistory History(string id, (double Day, double Iron)[] readings, params OilEvent[] events) =>
        OilHistory.Create(
            Machine(id),
            readings.Select((one, i) => Invented.Sample(i, one.Day, (Measurands.Iron, new Reading(one.Iron)))),
            [],
            events
        );

    private static Machine Machine(string id) =>
        new(
            id,
            "invented machine",
            Invented.Oil,
            Volume.FromLiters(1000),
            Temperature.FromDegreesCelsius(60),
            Temperature.FromDegreesCelsius(20)
        );

    private static Backtest Iron((double Day, double Iron)[] readings, params OilEvent[] events) =>
        Backtest.Of([History("M1", readings, events)], IronLimits, Days(0, 600));

    [Fact]
    public void A_limit_that_was_told_of_and_came()
    {
        var backtest = Iron([(0, 5), (25, 25), (55, 30), (85, 50)]);

        // Days 0, 30, 60 and 90: the day that first sees the last sample is the last one.
        backtest.DayCount.ShouldBe(4);
        backtest.MachineYears.ShouldBe(120 / 365.25, 1e-12);
        var alert = backtest.Alerts.ShouldHaveSingleItem();
        alert.Alert.Key.ShouldBe("M1/undated/wear");
        alert.RaisedAt.ShouldBe(Day(30));
        alert.Outcome.ShouldBe(Backtest.AlertOutcome.Confirmed);
        alert.DecidedAt.ShouldBe(Day(55));
        var crossing = backtest.Crossings.ShouldHaveSingleItem();
        crossing.Point.At.ShouldBe(Day(85));
        crossing.Limit.ShouldBe(40);
        crossing.WarnedAt.ShouldBe(Day(30));
        crossing.Warning.ShouldBe(TimeSpan.FromDays(55));
        crossing.WarnedBy.Select(one => one.Key).ShouldBe([alert.Alert.Key]);
        backtest.Total.Raised.ShouldBe(1);
        backtest.Total.RaisedPerMachineYear.ShouldBe(365.25 / 120);
        backtest.Total.Confirmed.ToString().ShouldBe("1 of 1, 100 % (5 to 100 %)");
        backtest.Total.Silent.Part.ShouldBe(0);
        backtest.Total.MedianWarning.ShouldBe(TimeSpan.FromDays(55));
    }

    [Fact]
    public void A_limit_that_was_crossed_in_silence()
    {
        var backtest = Iron([(0, 5), (25, 5), (55, 5), (85, 50)]);

        backtest.Crossings.ShouldHaveSingleItem().IsSilent.ShouldBeTrue();
        backtest.Crossings[0].Warning.ShouldBe(TimeSpan.Zero);
        backtest.Crossings[0].WarnedBy.ShouldBeEmpty();
        backtest.Total.Silent.ToString().ShouldBe("1 of 1, 100 % (5 to 100 %)");
        backtest.Total.MedianWarning.ShouldBe(TimeSpan.Zero);
        backtest.Alerts.ShouldHaveSingleItem().RaisedAt.ShouldBe(Day(90));
        backtest.Alerts[0].Outcome.ShouldBe(Backtest.AlertOutcome.Undecided);
    }

    /// <summary>The sample of day 60 raises the alert on day 60, and it is beyond the limit itself: no warning.</summary>
    [Fact]
    public void An_alert_that_comes_with_the_crossing_itself_is_no_warning() =>
        Iron([(0, 5), (60, 50)]).Crossings.ShouldHaveSingleItem().IsSilent.ShouldBeTrue();

    [Theory]
    [InlineData(239, false)]
    [InlineData(240, true)]
    public void An_alert_of_which_nothing_came_is_not_confirmed_once_its_time_is_on_record(double last, bool isKnown)
    {
        var alert = Iron([(0, 5), (25, 25), (55, 5), (150, 5), (last, 5)]).Alerts.ShouldHaveSingleItem();

        alert.RaisedAt.ShouldBe(Day(30));
        alert.Outcome.ShouldBe(isKnown ? Backtest.AlertOutcome.NotConfirmed : Backtest.AlertOutcome.Undecided);
        alert.DecidedAt.ShouldBe(isKnown ? Day(240) : null);
    }

    [Theory]
    [InlineData(240, true)]
    [InlineData(241, false)]
    public void A_reading_after_its_time_does_not_confirm_an_alert(double next, bool isConfirmed) =>
        Iron([(0, 5), (25, 25), (55, 5), (150, 5), (next, 25)])
            .Alerts[0]
            .Outcome.ShouldBe(isConfirmed ? Backtest.AlertOutcome.Confirmed : Backtest.AlertOutcome.NotConfirmed);

    /// <summary>Beyond 49 on day 25; beyond 43 on the other side on day 85: that it gets too thin neither confirms that it is too thick nor warns of it.</summary>
    [Fact]
    public void What_comes_on_the_other_side_is_another_problem()
    {
        var limits = new LimitSet(
            "invented",
            [
                new Limit(
                    Measurands.Viscosity40,
                    LimitKind.Absolute,
                    new LimitBand(49, null),
                    new LimitBand(43, null),
                    Source.CommonPractice("invented")
                ),
            ]
        );
        (double Day, double Value)[] readings = [(0, 46), (25, 50), (85, 42), (120, 46), (300, 46)];
        var history = OilHistory.Create(
            Machine("M1"),
            readings.Select((one, i) => Invented.Sample(i, one.Day, (Measurands.Viscosity40, new Reading(one.Value)))),
            [],
            []
        );

        var backtest = Backtest.Of([history], limits, Days(0, 600));

        backtest
            .Alerts.Select(one => $"{one.RaisedAt:yyyy-MM-dd} {one.Alert.Problem.Subject} {one.Outcome}")
            .ShouldBe(["2025-02-05 oil-identity/upper NotConfirmed", "2025-04-06 oil-identity/lower NotConfirmed"]);
        backtest.Crossings.Select(one => $"{one.Side} {one.IsSilent}").ShouldBe(["Upper True", "Lower True"]);
        backtest.Subjects.Select(one => one.Subject).ShouldBe(["oil-identity/lower", "oil-identity/upper"]);
    }

    [Fact]
    public void A_key_that_went_and_came_back_counts_again_and_a_gap_ends_a_warning()
    {
        var backtest = Iron([(0, 5), (25, 25), (55, 5), (85, 25), (115, 50)]);

        backtest.Alerts.Select(one => one.RaisedAt).ShouldBe([Day(30), Day(90)]);
        backtest.Alerts.Select(one => one.DecidedAt).ShouldBe([Day(85), Day(115)]);
        backtest.Total.Confirmed.Part.ShouldBe(2);
        backtest.Crossings.ShouldHaveSingleItem().WarnedAt.ShouldBe(Day(90));
    }

    [Fact]
    public void What_stood_before_the_first_day_is_not_raised_on_it()
    {
        var history = History("M1", [(0, 5), (25, 25), (55, 30), (85, 50)]);

        var backtest = Backtest.Of([history], IronLimits, Days(60, 600));

        backtest.Total.Raised.ShouldBe(0);
        backtest.Crossings.ShouldHaveSingleItem().WarnedAt.ShouldBe(Day(60));
    }

    [Fact]
    public void A_crossing_before_the_first_day_is_not_counted() =>
        Backtest
            .Of([History("M1", [(0, 5), (25, 50), (55, 50), (85, 50)])], IronLimits, Days(30, 600))
            .Total.Silent.Count.ShouldBe(0);

    [Fact]
    public void An_oil_change_acts_on_an_alert_and_begins_anew()
    {
        var backtest = Iron([(0, 5), (25, 25), (55, 5), (85, 50)], new OilChange(Day(40)));

        backtest.Alerts.Select(one => one.Alert.Key).ShouldBe(["M1/undated/wear", "M1/2025-02-15/wear"]);
        backtest.Alerts[0].Outcome.ShouldBe(Backtest.AlertOutcome.ActedOn);
        backtest.Alerts[0].DecidedAt.ShouldBe(Day(40));
        backtest.Total.ActedOn.ShouldBe(1);
        backtest.Total.Confirmed.Count.ShouldBe(0);
        backtest.Total.Confirmed.Share.ShouldBeNull();
        backtest.Crossings.ShouldHaveSingleItem().IsSilent.ShouldBeTrue();
    }

    [Fact]
    public void A_charge_that_begins_beyond_its_limit_crosses_nothing()
    {
        var backtest = Iron([(0, 5), (25, 5), (55, 50), (85, 50)], new OilChange(Day(40)));

        backtest.Crossings.ShouldBeEmpty();
        backtest.Total.BegunBeyond.ShouldBe(1);
    }

    /// <summary>The reading of day 42 is taken while the treatment runs, the one of day 45 at its end.</summary>
    [Fact]
    public void A_treatment_acts_on_an_alert_and_what_it_brings_up_while_it_runs_is_no_crossing()
    {
        var run = new TreatmentRun(Day(40), Day(45), TreatmentKind.FineFiltration, Measurands.Iron, 10);

        var backtest = Iron([(0, 5), (25, 25), (42, 60), (45, 5), (55, 5), (85, 50)], run);

        backtest.Alerts[0].Outcome.ShouldBe(Backtest.AlertOutcome.ActedOn);
        backtest.Alerts[0].DecidedAt.ShouldBe(Day(40));
        backtest.Crossings.ShouldHaveSingleItem().Point.At.ShouldBe(Day(85));
    }

    [Fact]
    public void A_treatment_of_something_else_changes_nothing()
    {
        var run = new TreatmentRun(Day(40), Day(45), TreatmentKind.VacuumDehydration, Measurands.WaterContent, 60);

        var backtest = Iron([(0, 5), (25, 25), (42, 50)], run);

        backtest.Alerts[0].Outcome.ShouldBe(Backtest.AlertOutcome.Confirmed);
        backtest.Crossings.ShouldHaveSingleItem().WarnedAt.ShouldBe(Day(30));
    }

    [Fact]
    public void An_alert_about_the_records_is_raised_and_not_judged()
    {
        var backtest = Iron([(0, 5), (25, 5), (400, 5)]);

        // Overdue from day 205 on, so raised on day 210.
        var alert = backtest.Alerts.ShouldHaveSingleItem();
        alert.RaisedAt.ShouldBe(Day(210));
        alert.Outcome.ShouldBe(Backtest.AlertOutcome.NotJudged);
        backtest.Total.NotJudged.ShouldBe(1);
        backtest.Total.Confirmed.Count.ShouldBe(0);
    }

    [Fact]
    public void Bounds_cross_only_where_they_say_so()
    {
        OilHistory With(Reading reading) =>
            OilHistory.Create(
                Machine("M1"),
                [
                    Invented.Sample(0, 0, (Measurands.Iron, new Reading(5))),
                    Invented.Sample(1, 25, (Measurands.Iron, reading)),
                ],
                [],
                []
            );
        int Crossed(Reading reading) => Backtest.Of([With(reading)], IronLimits, Days(0, 600)).Crossings.Count;

        Crossed(new Reading(40)).ShouldBe(0);
        Crossed(new Reading(40, Qualifier.GreaterThan)).ShouldBe(1);
        Crossed(new Reading(30, Qualifier.GreaterThan)).ShouldBe(0);
        Crossed(new Reading(90, Qualifier.LessThan)).ShouldBe(0);
        Crossed(new Reading(40.1)).ShouldBe(1);
    }

    [Fact]
    public void Without_an_alarm_figure_the_alert_figure_is_the_limit_and_a_lower_one_is_crossed_downwards()
    {
        var limits = new LimitSet(
            "invented",
            [
                new Limit(
                    Measurands.Rpvot,
                    LimitKind.Absolute,
                    null,
                    new LimitBand(100, null),
                    Source.CommonPractice("invented")
                ),
            ]
        );
        var history = OilHistory.Create(
            Machine("M1"),
            [
                Invented.Sample(0, 0, (Measurands.Rpvot, new Reading(300))),
                Invented.Sample(1, 25, (Measurands.Rpvot, new Reading(90))),
            ],
            [],
            []
        );

        var crossing = Backtest.Of([history], limits, Days(0, 600)).Crossings.ShouldHaveSingleItem();

        crossing.Side.ShouldBe(LimitSide.Lower);
        crossing.Limit.ShouldBe(100);
    }

    /// <summary>Days 0 and 30 have a sensor reading each; of the moisture sensor's content by the curve: 400 mg/kg · 0.9 at 60 °C.</summary>
    [Fact]
    public void A_sensor_can_cross()
    {
        SensorReading Row(double day, double percent) =>
            new(
                Day(day),
                new Dictionary<Measurand, Reading>
                {
                    [Measurands.RelativeSaturation] = new(percent),
                    [Measurands.OilTemperature] = new(60),
                }
            );
        var limits = new LimitSet(
            "invented",
            [
                new Limit(
                    Measurands.WaterContent,
                    LimitKind.Absolute,
                    new LimitBand(200, 350),
                    null,
                    Source.CommonPractice("invented")
                ),
            ]
        );
        var history = OilHistory.Create(Machine("M1"), [], [Row(0, 30), Row(29, 90)], []);

        var crossing = Backtest.Of([history], limits, Days(0, 600)).Crossings.ShouldHaveSingleItem();

        crossing.Point.At.ShouldBe(Day(29));
        crossing.Point.Reading.Value.ShouldBe(360, 0.5);
    }

    [Fact]
    public void Limits_may_differ_from_machine_to_machine_and_machines_are_told_apart()
    {
        var rising = new[] { (0.0, 5.0), (25, 25), (55, 30), (85, 50) };
        var loose = new LimitSet(
            "loose",
            [
                new Limit(
                    Measurands.Iron,
                    LimitKind.Absolute,
                    new LimitBand(200, 400),
                    null,
                    Source.CommonPractice("invented")
                ),
            ]
        );

        var backtest = Backtest.Of(
            [History("M2", rising), History("M1", rising), History("M3", [(0, 5), (25, 5)])],
            machine => machine.Id == "M2" ? loose : IronLimits,
            Days(0, 600)
        );

        backtest.MachineCount.ShouldBe(3);
        backtest.DayCount.ShouldBe(4 + 4 + 2);
        backtest.Alerts.Select(one => one.MachineId).ShouldBe(["M1"]);
        backtest.Subjects.ShouldHaveSingleItem().Subject.ShouldBe("wear");
    }

    [Fact]
    public void The_table_has_every_figure()
    {
        var backtest = Iron([(0, 5), (25, 25), (55, 30), (85, 50)]);

        backtest
            .ToString()
            .ShouldBe(
                """
                Backtest of 1 machines, 2025-01-06 to 2026-08-29: 4 days, 0.3 machine-years

                alerts  raised  a year  confirmed                   not  acted on  undecided  not judged
                wear    1       3.04    1 of 1, 100 % (5 to 100 %)  0    0         0          0
                all     1       3.04    1 of 1, 100 % (5 to 100 %)  0    0         0          0

                limits crossed  crossed  silent                   median warning  begun beyond
                wear            1        0 of 1, 0 % (0 to 95 %)  55 d            0
                all             1        0 of 1, 0 % (0 to 95 %)  55 d            0

                forecasts, crossed  in 5 to 95 % (90 %)  before (5 %)  after (5 %)  width  score
                all                 none                 -             -            -      -

                forecasts, chances  not crossed  chance by then  within horizon: foretold  came
                all                 0            -               -                         none
                """.ReplaceLineEndings("\n")
            );
        backtest.Alerts[0].ToString().ShouldBe("2025-02-05 M1/undated/wear: confirmed 2025-03-02");
        backtest
            .Crossings[0]
            .ToString()
            .ShouldBe("2025-04-01 M1 iron beyond 40 mg/kg: 55 days of warning by limit-passed");
        backtest
            .Total.ToString()
            .ShouldBe("all: 1 alerts, confirmed 1 of 1, 100 % (5 to 100 %); silent 0 of 1, 0 % (0 to 95 %); held none");
    }
}
